import type { BindingRow, Scheme, Setting, Variation } from '../../language/model.js';
import { alternativeSentences, type Speech } from '../wording/gestures.js';
import { switchWords } from '../wording/machine.js';
import { actionWords } from '../wording/rows.js';
import { isForOne, playerWords } from '../wording/who.js';

/** Chapter 6: the settings, and the games that they make. */
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

export function viewSettings(scheme: Scheme, speech: Speech): SettingsView {
  return {
    settings: scheme.settings.map(setting => viewSetting(setting, scheme, speech)),
    games: scheme.variations.map(variation => viewGame(variation, scheme, speech)),
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

function viewGame(variation: Variation, scheme: Scheme, { phrases }: Speech): GameRow {
  const isForAll = variation.seats.length === scheme.seats.length;
  return {
    name: variation.name,
    words: variation.words,
    seats: isForAll ? '' : phrases.and(variation.seats.map(({ name }) => name)),
    values: [...variation.values].map(([{ name }, value]) => phrases.say('name and value', { name, value })),
  };
}
