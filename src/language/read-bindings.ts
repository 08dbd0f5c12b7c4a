import type { Placed } from '../findings/place.js';
import type { SwitchName } from '../hardware/switches.js';
import { AMOUNTS } from './amounts.js';
import { readConditions } from './conditions.js';
import { controlText } from './control-words.js';
import { readAlternatives } from './controls.js';
import { readEffects } from './effects.js';
import { badValue, createSpot, type Spot } from './faults.js';
import { readGesture } from './gesture.js';
import type { Action, BindingRow, Chord, Gesture, Mode } from './model.js';
import { resolveName } from './names.js';
import { positionsOf } from './positions.js';
import type { Scope } from './scope.js';
import { listWords, normal, tidy } from './spelling.js';
import { LEAVE_EMPTY, needCell, type Row } from './tables.js';
import { readWho } from './who.js';
import { placed, placeOf, splitWords, type Words } from './words.js';

/**
 * The rows of a mode's table of bindings. A row with a cell that can't be read is left out (with a finding
 * for each such cell): read in part it would fire where it should not.
 */
export function readBindings(rows: readonly Row[], mode: Mode, scope: Scope): readonly BindingRow[] {
  const read: BindingRow[] = [];
  for (const [index, row] of rows.entries()) {
    const binding = readBinding(row, index, mode, scope);
    if (binding !== null) read.push(binding);
  }
  return read;
}

function readBinding(row: Row, index: number, mode: Mode, scope: Scope): BindingRow | null {
  const inMode = createSpot(scope.report, ` in “${mode.name}”`, { mode: mode.name });
  const words = needCell(row, 'Action', inMode, 'Write an action of `## Actions`.');
  const spot = words === null ? inMode : spotOf(words, mode, scope);
  const action =
    words === null ? null : resolveName(words, scope.actions, spot, 'Define it in `## Actions`.');
  const at = words === null ? row.at : placeOf(words);
  const whoWords = needCell(row, 'Who', spot, 'Write who does it: a player, `each`, `anyone` or `game`.', at);
  const who =
    whoWords === null
      ? null
      : readWho(whoWords, { seats: mode.seats, hasControl: row.cells.has('Control') }, spot);
  const input = who?.kind === 'game' ? readNoInput(row, spot) : readInput(row, scope, spot, at, who !== null);
  const cells = readLinks(row, scope, spot);
  if (action === null || who === null || whoWords === null || input === null || cells === null) return null;
  return { mode, at, index, who: placed(who, whoWords), action, ...input, ...cells };
}

function spotOf(words: Words, mode: Mode, scope: Scope): Spot {
  const name = tidy(words.text);
  const known = scope.actions.find(name);
  const details = known === undefined ? { mode: mode.name } : { mode: mode.name, actions: [known.name] };
  return createSpot(scope.report, ` of “${name}” in “${mode.name}”`, details);
}

interface Input {
  readonly alternatives: readonly Chord[];
  readonly gesture: Placed<Gesture> | null;
}

/** What the game does by itself has no control. */
function readNoInput(row: Row, spot: Spot): Input | null {
  let clean = true;
  for (const column of ['Control', 'Gesture']) {
    const words = row.cells.get(column);
    if (words === undefined) continue;
    clean = false;
    badValue(spot, words, column, `the game does this by itself, so “${tidy(words.text)}” would do nothing`, [
      `Leave ${column} empty.`,
      'Write in the column Who which player does it.',
    ]);
  }
  return clean ? { alternatives: [], gesture: null } : null;
}

function readInput(
  row: Row,
  scope: Scope,
  spot: Spot,
  at: Placed<unknown>['at'],
  known: boolean,
): Input | null {
  const control = known ? needInput(row, 'Control', spot, at) : (row.cells.get('Control') ?? null);
  const gesture = known ? needInput(row, 'Gesture', spot, at) : (row.cells.get('Gesture') ?? null);
  const alternatives = control === null ? null : readAlternatives(control, scope.controls, 'Control', spot);
  const read =
    gesture === null ? null : readGesture(gesture, scope.times, 'Gesture', spot, panelOf(alternatives));
  if (gesture === null || alternatives === null || read === null) return null;
  if (!hasPosition(read, alternatives, gesture, spot)) return null;
  if (alternatives.length > AMOUNTS.alternatives) {
    badValue(
      spot,
      control ?? at,
      'Control',
      `there are ${alternatives.length} controls joined by “or”, and ${AMOUNTS.alternatives} is the limit`,
      ['Split the row into several rows of the same action.'],
    );
    return null;
  }
  return { alternatives, gesture: placed(read, gesture) };
}

/** Unlike other columns, one of these may be missing only where every row is the game's. */
function needInput(
  row: Row,
  column: 'Control' | 'Gesture',
  spot: Spot,
  at: Placed<unknown>['at'],
): Words | null {
  const words = row.cells.get(column);
  if (words !== undefined) return words;
  if (!row.columns.has(column) && row.isUnclear) return null;
  badValue(spot, at, column, 'nothing is said, but a player has to do something', [
    column === 'Control' ? 'Write a control.' : 'Write a gesture.',
    'If the game does it by itself, write `game` in the column Who.',
  ]);
  return null;
}

/** The two-position switch that every alternative is; null where there is no such one. */
export function panelOf(alternatives: readonly Chord[] | null): SwitchName | null {
  const names = new Set(
    alternatives?.map(({ parts: [part, ...others] }) =>
      part?.kind === 'switch' && others.length === 0 && positionsOf(part.name).length > 0 ? part.name : null,
    ),
  );
  const [name = null] = names;
  return names.size === 1 ? name : null;
}

/** A position must be one of the switch that the row is about. */
export function hasPosition(
  gesture: Gesture,
  alternatives: readonly Chord[],
  words: Words,
  spot: Spot,
): boolean {
  if (gesture.kind !== 'at' && gesture.kind !== 'flip to') return true;
  for (const { parts } of alternatives) {
    const [part] = parts;
    if (part?.kind !== 'switch' || parts.length > 1) continue;
    const positions = positionsOf(part.name);
    if (positions.length === 0 || positions.includes(gesture.position)) continue;
    badValue(spot, words, 'Gesture', `${controlText(part)} has no position ${gesture.position}`, [
      `Write ${listWords(positions)}.`,
    ]);
    return false;
  }
  return true;
}

type Links = Pick<BindingRow, 'conditions' | 'effects' | 'insteadOf' | 'alongWith'>;

function readLinks(row: Row, scope: Scope, spot: Spot): Links | null {
  const isTaken = (text: string): boolean => scope.actions.find(text) !== undefined;
  const read = <T>(column: string, reader: (words: Words) => readonly T[] | null): readonly T[] | null => {
    const words = row.cells.get(column);
    if (words === undefined) return [];
    if (NOTHING.includes(normal(words.text)) && !isTaken(words.text)) return saysNothing(words, column, spot);
    return reader(words);
  };
  const conditions = read('When', words => readConditions(words, scope, spot));
  const effects = read('Then', words => readEffects(words, scope, spot));
  const insteadOf = read('Instead of', words => readActionList(words, 'Instead of', scope, spot));
  const alongWith = read('Along with', words => readActionList(words, 'Along with', scope, spot));
  if (conditions === null || effects === null || insteadOf === null || alongWith === null) return null;
  return { conditions, effects, insteadOf, alongWith };
}

/** Words for nothing, which a cell must not hold. */
const NOTHING = ['none', 'nothing', 'no', 'n/a', 'na', 'nil', 'always'];

function saysNothing(words: Words, column: string, spot: Spot): null {
  badValue(spot, words, column, `“${tidy(words.text)}” is not a word of the language`, [LEAVE_EMPTY]);
  return null;
}

function readActionList(
  words: Words,
  column: string,
  scope: Scope,
  spot: Spot,
): readonly Placed<Action>[] | null {
  const parts = splitWords(words, /[;,]/g);
  const actions: Placed<Action>[] = [];
  for (const part of parts) {
    if (part.text === '') {
      badValue(spot, words, column, `an action is missing in “${tidy(words.text)}”`, [
        'Take the extra `;` out.',
      ]);
      continue;
    }
    const action = resolveName(part, scope.actions, spot, 'Define it in `## Actions`.', '; ');
    if (action !== null) actions.push(placed(action, part));
  }
  return actions.length === parts.length ? actions : null;
}
