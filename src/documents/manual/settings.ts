import type { BindingRow, Scheme, Setting, Variation } from '../../language/model.js';
import { alternativeSentences, type Speech } from '../wording/gestures.js';
import { switchWords } from '../wording/machine.js';
import { actionWords } from '../wording/rows.js';
import { isForOne, playerWords } from '../wording/who.js';

/** Chapter 6: the settings, and those games that the chapter before says nothing of. */
export interface SettingsView {
  readonly settings: readonly SettingRow[];
  readonly games: readonly GameRow[];
}

export interface SettingRow {
  readonly name: string;
  readonly values: string;
  readonly startsAs: string;
  /** The ways to change it, a line each. */
  readonly how: readonly string[];
}

export interface GameRow {
  readonly name: string;
  readonly words: string;
  readonly seats: string;
  readonly values: readonly string[];
}

/** @param told names of the games that are told of already, with the way to each */
export function viewSettings(scheme: Scheme, told: ReadonlySet<string>, speech: Speech): SettingsView {
  return {
    settings: scheme.settings.map(setting => viewSetting(setting, scheme, speech)),
    games: scheme.variations
      .filter(({ name }) => !told.has(name))
      .map(variation => ({ ...viewGame(variation, speech), seats: seatsWords(variation, scheme, speech) })),
  };
}

function viewSetting(setting: Setting, scheme: Scheme, speech: Speech): SettingRow {
  return {
    name: setting.name,
    values: valuesWords(setting.values, speech),
    startsAs: setting.startsAs,
    how: howWords(setting, scheme, speech),
  };
}

/** `1 to 8` for whole numbers in a row; else a list. */
function valuesWords(values: readonly string[], { phrases }: Speech): string {
  const [low, high] = [values[0], values.at(-1)];
  const isRange =
    values.length > 2 &&
    values.every((value, index) => /^\d+$/.test(value) && Number(value) === Number(low) + index);
  return isRange && low !== undefined && high !== undefined
    ? phrases.say('from to', { low, high })
    : values.join(', ');
}

function howWords(setting: Setting, scheme: Scheme, speech: Speech): readonly string[] {
  const { phrases } = speech;
  const { setBy } = setting;
  if (setBy.kind === 'switch') {
    const positions = [...setBy.values].map(([position, value]) =>
      phrases.say('switch value', { position, value }),
    );
    return [
      phrases.say('changed by switch', {
        switch: switchWords(setBy.name, phrases),
        positions: positions.join(', '),
      }),
    ];
  }
  const rows = scheme.modes.flatMap(mode => mode.rows.filter(row => changes(row, setting)));
  if (rows.length === 0) return [phrases.say('changed by game')];
  return [
    ...new Set(
      rows.map(row => phrases.say('changed by action', { mode: row.mode.name, how: rowHow(row, speech) })),
    ),
  ];
}

const changes = (row: BindingRow, setting: Setting): boolean =>
  row.effects.some(effect => effect.kind !== 'go to' && effect.setting === setting);

/** With the player where only one of several can do it. */
function rowHow(row: BindingRow, speech: Speech): string {
  const { phrases } = speech;
  if (row.gesture === null) return actionWords(row.action);
  const step = phrases.or(alternativeSentences(row.alternatives, row.gesture.value, speech));
  const { value: who } = row.who;
  return who.kind === 'player' && !isForOne(row.mode)
    ? phrases.say('start by player', { step, player: playerWords(who.player, phrases) })
    : step;
}

/** What a game is, and the value of each setting it fixes. */
export function viewGame({ name, words, values }: Variation, { phrases }: Speech): Omit<GameRow, 'seats'> {
  const fixed = [...values].map(([setting, value]) =>
    phrases.say('name and value', { name: setting.name, value }),
  );
  return { name, words, values: fixed };
}

function seatsWords({ seats }: Variation, scheme: Scheme, { phrases }: Speech): string {
  return seats.length === scheme.seats.length ? '' : phrases.and(seats.map(({ name }) => name));
}
