import type { RootContent } from 'mdast';
import { bindingsOfRow } from '../../gestures/bindings.js';
import type { BindingRow, Mode, Scheme } from '../../language/model.js';
import { alternativeSentences, type Speech } from '../wording/gestures.js';
import {
  actionWords,
  conditionSentence,
  effectSentence,
  insteadSentence,
  togetherSentences,
} from '../wording/rows.js';
import { isForOne, whoWords } from '../wording/who.js';

/** Chapter 4: a mode, and who does what in it with which control. */
export interface ModeView {
  readonly name: string;
  /** `Menu`, `Game`, `Pause`. */
  readonly kind: string;
  readonly prose: readonly RootContent[];
  readonly notes: readonly string[];
  readonly groups: readonly ModeGroup[];
}

export interface ModeGroup {
  readonly who: string;
  readonly rows: readonly ModeRow[];
}

export interface ModeRow {
  /** The ways to do it, a sentence each; any of them will do. None where the game does it. */
  readonly how: readonly string[];
  readonly words: string;
  readonly notes: readonly string[];
}

export function viewModes(scheme: Scheme, speech: Speech): readonly ModeView[] {
  return scheme.modes.map(mode => viewMode(mode, scheme, speech));
}

function viewMode(mode: Mode, scheme: Scheme, speech: Speech): ModeView {
  const { phrases } = speech;
  const groups = new Map<string, ModeRow[]>();
  for (const row of mode.rows) {
    const who = whoWords(row, phrases);
    groups.set(who, [...(groups.get(who) ?? []), viewRow(row, scheme, speech)]);
  }
  const seats = phrases.and(mode.seats.map(({ name }) => name));
  return {
    name: mode.name,
    kind: phrases.say(`mode kind ${mode.kind}`),
    prose: mode.prose,
    notes: [
      ...(mode === scheme.startMode ? [phrases.say('mode begins')] : []),
      ...(mode.seats.length < scheme.seats.length ? [phrases.say('mode seats', { seats })] : []),
      ...(mode.rows.length === 0 ? [phrases.say('mode empty')] : []),
    ],
    groups: [...groups].map(([who, rows]) => ({ who, rows })),
  };
}

function viewRow(row: BindingRow, scheme: Scheme, speech: Speech): ModeRow {
  const condition = conditionSentence(row.conditions, speech);
  const instead = insteadSentence(row, speech);
  const seats = onlyInSeats(row, scheme, speech);
  return {
    how: row.gesture === null ? [] : alternativeSentences(row.alternatives, row.gesture.value, speech),
    words: actionWords(row.action),
    notes: [
      ...row.effects.map(effect => effectSentence(effect, row.mode, speech)),
      ...(condition === null ? [] : [condition]),
      ...(instead === null ? [] : [instead]),
      ...togetherSentences(row, speech),
      ...(seats === null ? [] : [seats]),
    ],
  };
}

/** A row that can be done in some of its mode's seats rows only says in which; where a player sits says itself. */
function onlyInSeats(row: BindingRow, scheme: Scheme, { phrases }: Speech): string | null {
  const [profile] = scheme.consoles;
  if (row.gesture === null || profile === undefined) return null;
  const { value: who } = row.who;
  const isToldApart = who.kind === 'player' && !isForOne(row.mode);
  const seated = row.mode.seats.filter(
    ({ players }) => !isToldApart || players.some(({ name }) => name === who.player),
  );
  const able = seated.filter(seats =>
    scheme.consoles.some(each => bindingsOfRow(row, seats, each).length > 0),
  );
  if (able.length === 0 || able.length === seated.length) return null;
  return phrases.say('only in seats', { seats: phrases.and(able.map(({ name }) => name)) });
}
