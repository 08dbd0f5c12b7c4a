import type { SwitchName } from '../hardware/switches.js';
import { readAlternatives } from './controls.js';
import { badValue, createSpot, duplicateName, type Spot, unknownName } from './faults.js';
import { FIRST_WORDS, readGesture } from './gesture.js';
import type { Fallback, Mode } from './model.js';
import { resolveName } from './names.js';
import { hasPosition, panelOf } from './read-bindings.js';
import { readSwitch } from './read-switches.js';
import type { Scope } from './scope.js';
import type { Section } from './sections.js';
import { normal, tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placed, placeOf, sliceWords, type Words } from './words.js';

type Subject = Fallback['subject'];
type Instead = Fallback['instead'];

export function readFallbacks(section: Section | undefined, scope: Scope): readonly Fallback[] {
  if (section === undefined) return [];
  const read: Fallback[] = [];
  for (const row of readTable(section, createSpot(scope.report, '')).rows) {
    const fallback = readRow(row, scope);
    if (fallback !== null && isConsistent(fallback, read, row, scope)) read.push(fallback);
  }
  return read;
}

function readRow(row: Row, scope: Scope): Fallback | null {
  const plain = createSpot(scope.report, '');
  const without = needCell(row, 'Without', plain, 'Write the switch that is not there.');
  const subject = needCell(row, 'For', plain, 'Write the setting or the action that loses it.');
  const spot = subject === null ? plain : createSpot(scope.report, ` for “${tidy(subject.text)}”`);
  const instead = needCell(row, 'Instead', spot, 'Write `MODE: CONTROL GESTURE` or `stays VALUE`.');
  const name = without === null ? null : readSwitch(without, plain);
  const found = subject === null ? null : readSubject(subject, name, scope, plain);
  const read = instead === null ? null : readInstead(instead, found, scope, detailed(spot, found));
  if (subject === null || name === null || found === null || read === null) return null;
  return { at: placeOf(subject), without: name, subject: found, instead: read };
}

function detailed(spot: Spot, subject: Subject | null): Spot {
  if (subject === null) return spot;
  const details =
    subject.kind === 'setting' ? { settings: [subject.setting.name] } : { actions: [subject.action.name] };
  return createSpot(spot.report, spot.of, details);
}

/** Where a setting and an action have one name, the one that the switch has to do with is meant. */
function readSubject(words: Words, name: SwitchName | null, scope: Scope, spot: Spot): Subject | null {
  const setting = scope.settings.names.find(words.text);
  const action = scope.actions.find(words.text);
  const owned = setting?.setBy.kind === 'switch' && setting.setBy.name === name;
  if (setting !== undefined && (owned || action === undefined)) return { kind: 'setting', setting };
  if (action !== undefined) return { kind: 'action', action };
  const names = [...scope.settings.names.list(), ...scope.actions.list()];
  unknownName(spot, words, 'setting or action', names, 'Define it in `## Settings` or `## Actions`.');
  return null;
}

function readInstead(words: Words, subject: Subject | null, scope: Scope, spot: Spot): Instead | null {
  const colon = words.text.indexOf(':');
  const modeWords = sliceWords(words, 0, Math.max(colon, 0));
  const stays = /^stays(?:\s+|$)/i.exec(words.text)?.[0];
  if (stays !== undefined && (modeWords.text === '' || scope.modes.find(modeWords.text) === undefined))
    return readStays(words, sliceWords(words, stays.length), subject, scope, spot);
  const input = sliceWords(words, colon + 1);
  if (modeWords.text === '' || input.text === '') {
    unreadable(words, spot);
    return null;
  }
  const mode = resolveName(modeWords, scope.modes, spot, 'Write a section `## Mode: NAME` for it.');
  return readBinding(
    input,
    words,
    mode,
    scope,
    mode === null ? spot : createSpot(spot.report, spot.of, { ...spot.details, mode: mode.name }),
  );
}

function readStays(
  whole: Words,
  value: Words,
  subject: Subject | null,
  scope: Scope,
  spot: Spot,
): Instead | null {
  if (subject === null) return null;
  if (subject.kind === 'action') {
    badValue(
      spot,
      whole,
      'Instead',
      `“${subject.action.name}” is an action, and only a setting can stay at a value`,
      [
        'Write `MODE: CONTROL GESTURE`.',
        'If the action can be done without, write `nice` in its column `Need`.',
      ],
    );
    return null;
  }
  if (value.text === '') {
    unreadable(whole, spot);
    return null;
  }
  const named = scope.settings.readValue(subject.setting, value, 'Instead', spot);
  return named === null ? null : { kind: 'stays', value: named };
}

function unreadable(words: Words, spot: Spot): void {
  badValue(spot, words, 'Instead', `“${tidy(words.text)}” says neither a binding nor a value`, [
    'Write `MODE: CONTROL GESTURE`, for example `Quay: left stick up press`.',
    'Write `stays VALUE` if the loss is intended.',
  ]);
}

/** `left stick up press`: the control ends where the gesture begins. */
function readBinding(
  input: Words,
  whole: Words,
  mode: Mode | null,
  scope: Scope,
  spot: Spot,
): Instead | null {
  const splits = [...input.text.matchAll(/\S+/g)]
    .filter(word => word.index > 0 && FIRST_WORDS.has(normal(word[0])))
    .map(word => word.index);
  const isControl = (end: number): boolean =>
    input.text
      .slice(0, end)
      .split(/\+|\sor\s/i)
      .every(part => scope.controls.find(part) !== null);
  const split = splits.find(isControl) ?? splits[0];
  if (split === undefined) {
    unreadable(whole, spot);
    return null;
  }
  const gestureWords = sliceWords(input, split);
  const alternatives = readAlternatives(sliceWords(input, 0, split), scope.controls, 'Instead', spot);
  const gesture = readGesture(gestureWords, scope.times, 'Instead', spot, panelOf(alternatives));
  if (mode === null || alternatives === null || gesture === null) return null;
  if (!hasPosition(gesture, alternatives, gestureWords, spot)) return null;
  return { kind: 'binding', mode, alternatives, gesture: placed(gesture, gestureWords), at: placeOf(whole) };
}

/** The row must have something to fall back from, and not contradict one before it. */
function isConsistent(fallback: Fallback, before: readonly Fallback[], row: Row, scope: Scope): boolean {
  const { subject, without, instead } = fallback;
  const words = row.cells.get('For');
  if (words === undefined) return false;
  const plain = detailed(createSpot(scope.report, ''), subject);
  if (subject.kind === 'setting') {
    const { setBy, name } = subject.setting;
    if (scope.settings.isUnclear(subject.setting)) return true;
    if (setBy.kind === 'switch' && setBy.name === without) {
      const same = before.filter(other => isSame(other, fallback));
      const clash = same.find(other => other.instead.kind === 'stays' || instead.kind === 'stays');
      if (clash === undefined) return true;
      duplicateName(plain, words, `fallbacks without ${without}, one of them “stays”,`, clash.at, [
        'Take one of the two rows out: either the setting stays at a value, or another control sets it.',
      ]);
      return false;
    }
    badValue(plain, words, 'For', `“${name}” is not set by ${without}, so it loses nothing without it`, [
      setBy.kind === 'game'
        ? 'Take the row out: the game sets it on every console.'
        : `Write “${setBy.name}” in the column Without.`,
    ]);
    return false;
  }
  return true;
}

function isSame(a: Fallback, b: Fallback): boolean {
  if (a.without !== b.without || a.subject.kind !== b.subject.kind) return false;
  return (
    a.subject.kind === 'setting' && b.subject.kind === 'setting' && a.subject.setting === b.subject.setting
  );
}
