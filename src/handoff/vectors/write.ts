import type { Setting } from '../../language/model.js';
import type { Handoff } from '../model.js';
import { INPUT_REGISTERS, type InputRegister, type ReadValues, type RegisterValues } from '../registers.js';
import { hex } from '../routine/code.js';
import { numberOfValue } from '../units.js';
import { vectorsGuide } from './guide.js';
import type { Levels } from './situation.js';
import { engagedWords, type Vector, valuesOfRead } from './vectors.js';

export const VECTORS_FORMAT = { format: 'leverleaf-vectors', version: 1 } as const;

/** Several equal reads in a row. */
export interface VectorStep extends VectorRead {
  /** How many reads in a row are the same. */
  readonly times: number;
  /** Settings that are no longer as at the start: what fired before has changed them. */
  readonly settings?: readonly SettingEntry[];
  /** Symbols of what must fire at each of them, and nothing else. */
  readonly fires: readonly string[];
}

export interface SettingEntry {
  readonly setting: string;
  readonly value: string;
  /** Its place among the setting's values, from 0. */
  readonly number: number;
}

export interface VectorRead {
  readonly engaged: readonly string[];
  readonly values: RegisterValues;
  /** While a row of a keypad is driven: what then differs. Only where a keypad is plugged in. */
  readonly rows?: readonly { readonly row: number; readonly values: Partial<RegisterValues> }[];
  /** Positions of paddles. Only where there are paddles. */
  readonly paddles?: readonly { readonly control: string; readonly position: number }[];
}

/** A vector as it is written. */
export interface VectorEntry {
  /** From 1, in the order of the file. */
  readonly number: number;
  readonly mode: string;
  readonly seats: string;
  readonly consoles: readonly string[];
  readonly standards: readonly string[];
  readonly kind: string;
  readonly action: string;
  readonly player: string;
  readonly controls: readonly string[];
  readonly gesture: string;
  readonly settings: readonly SettingEntry[];
  readonly before: VectorRead;
  readonly steps: readonly VectorStep[];
}

/** Vectors that are the same on several standards are one. */
export function vectorEntries(vectors: readonly Vector[]): readonly VectorEntry[] {
  const byText = new Map<string, { entry: Omit<VectorEntry, 'number' | 'standards'>; standards: string[] }>();
  for (const vector of vectors) {
    const entry = viewVector(vector);
    const key = JSON.stringify(entry);
    const known = byText.get(key) ?? { entry, standards: [] };
    if (!known.standards.includes(vector.standard.name)) known.standards.push(vector.standard.name);
    byText.set(key, known);
  }
  return [...byText.values()].map(({ entry, standards }, index) => ({
    number: index + 1,
    ...entry,
    standards,
  }));
}

function viewVector(vector: Vector): Omit<VectorEntry, 'number' | 'standards'> {
  const { unit, kind, binding, settings } = vector;
  return {
    mode: unit.mode.name,
    seats: unit.seats.name,
    consoles: unit.consoles.profiles.map(({ name }) => name),
    kind,
    action: binding?.actionName ?? '',
    player: binding?.player ?? '',
    controls: binding?.parts.map(({ id }) => id) ?? [],
    gesture: binding === null ? '' : gestureWords(binding.gesture),
    settings: [...settings].map(viewSetting),
    before: viewRead(vector, vector.before, vector.before),
    steps: stepsOf(vector),
  };
}

const viewSetting = ([setting, value]: readonly [Setting, string]): SettingEntry => ({
  setting: setting.name,
  value,
  number: numberOfValue(setting, value),
});

function changedSettings({ settings, settingsAt }: Vector, read: number): readonly SettingEntry[] {
  const changed = [...(settingsAt[read] ?? [])].filter(([setting, value]) => settings.get(setting) !== value);
  return changed.map(viewSetting);
}

function gestureWords(gesture: NonNullable<Vector['binding']>['gesture']): string {
  if ('position' in gesture) return `${gesture.kind} ${gesture.position}`;
  return 'time' in gesture ? `${gesture.kind} ${gesture.time.text}` : gesture.kind;
}

interface OpenStep {
  times: number;
  readonly read: VectorRead;
  readonly settings: readonly SettingEntry[];
  readonly fires: readonly string[];
}

function stepsOf(vector: Vector): readonly VectorStep[] {
  const steps: OpenStep[] = [];
  const views = new Map<string, VectorRead>();
  let before = vector.before;
  let settings: readonly SettingEntry[] = [];
  vector.reads.forEach((levels, index) => {
    const key = `${levels.join()}|${before.join()}`;
    const read = views.get(key) ?? viewRead(vector, levels, before);
    views.set(key, read);
    const fires = vector.fires[index] ?? [];
    if (vector.settingsAt[index] !== vector.settingsAt[index - 1]) settings = changedSettings(vector, index);
    const step = { times: 1, read, settings, fires };
    const last = steps.at(-1);
    if (last !== undefined && isSameStep(last, step)) last.times++;
    else steps.push(step);
    before = levels;
  });
  return steps.map(({ times, read, settings, fires }) => ({
    times,
    ...read,
    ...(settings.length === 0 ? {} : { settings }),
    fires,
  }));
}

function isSameStep(a: OpenStep, b: OpenStep): boolean {
  if (a.fires.join() !== b.fires.join()) return false;
  if (a.settings !== b.settings && JSON.stringify(a.settings) !== JSON.stringify(b.settings)) return false;
  return a.read === b.read || JSON.stringify(a.read) === JSON.stringify(b.read);
}

function viewRead(vector: Vector, levels: Levels, before: Levels): VectorRead {
  const read: ReadValues = valuesOfRead(vector, levels);
  const rows = [...read.rows].map(([row, values]) => ({ row, values: differing(values, read.values) }));
  const paddles = [...read.paddles].map(([control, position]) => ({ control, position }));
  return {
    engaged: engagedWords(vector.play, levels, before),
    values: read.values,
    ...(rows.length === 0 ? {} : { rows }),
    ...(paddles.length === 0 ? {} : { paddles }),
  };
}

function differing(values: RegisterValues, base: RegisterValues): Partial<RegisterValues> {
  const found: Partial<Record<InputRegister, number>> = {};
  for (const symbol of INPUT_REGISTERS) if (values[symbol] !== base[symbol]) found[symbol] = values[symbol];
  return found;
}

/** `vectors.json`: an object a line, so that a difference is easy to read. */
export function writeVectorsJson(handoff: Handoff, entries: readonly VectorEntry[]): string {
  const { scheme } = handoff;
  const head = {
    ...VECTORS_FORMAT,
    title: scheme.title.value,
    shortName: scheme.game.shortName.value,
    howToRun: vectorsGuide(handoff),
    registers: INPUT_REGISTERS,
  };
  const begin = JSON.stringify(head, null, 1).replace(/\n\}$/, '');
  const lines = entries.map(entry => `  ${JSON.stringify(entry)}`).join(',\n');
  return `${begin},\n "vectors": [\n${lines}\n ]\n}\n`;
}

const CSV_HEAD = [
  'vector',
  'mode',
  'seats',
  'consoles',
  'standards',
  'kind',
  'action',
  'player',
  'control',
  'gesture',
  'settings',
  'step',
  'times',
  ...INPUT_REGISTERS,
  'rows',
  'paddles',
  'engaged',
  'fires',
] as const;

/** `vectors.csv`: one line a step; step 0 is the read before the mode is entered. RFC 4180. */
export function writeVectorsCsv(entries: readonly VectorEntry[]): string {
  const rows = entries.flatMap(entry => [
    csvRow(entry, 0, { ...entry.before, times: 1, fires: [] }),
    ...entry.steps.map((step, index) => csvRow(entry, index + 1, step)),
  ]);
  return `${[CSV_HEAD, ...rows].map(row => row.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

function csvRow(entry: VectorEntry, step: number, read: VectorStep): readonly string[] {
  return [
    String(entry.number),
    entry.mode,
    entry.seats,
    entry.consoles.join('; '),
    entry.standards.join('; '),
    entry.kind,
    entry.action,
    entry.player,
    entry.controls.join(' + '),
    entry.gesture,
    settingWords(entry, read),
    String(step),
    String(read.times),
    ...INPUT_REGISTERS.map(symbol => hex(read.values[symbol])),
    (read.rows ?? []).map(({ row, values }) => `row ${row} ${valueWords(values)}`.trim()).join('; '),
    (read.paddles ?? []).map(({ control, position }) => `${control}: ${position}`).join('; '),
    read.engaged.join('; '),
    read.fires.join('; '),
  ];
}

/** Every setting's value before the read. */
function settingWords(entry: VectorEntry, { settings = [] }: VectorStep): string {
  const now = (name: string, start: string) =>
    settings.find(({ setting }) => setting === name)?.value ?? start;
  return entry.settings.map(({ setting, value }) => `${setting}: ${now(setting, value)}`).join('; ');
}

function valueWords(values: Partial<RegisterValues>): string {
  return INPUT_REGISTERS.flatMap(symbol => {
    const value = values[symbol];
    return value === undefined ? [] : [`${symbol}=${hex(value)}`];
  }).join(' ');
}

/** What a spreadsheet would take for a formula gets an apostrophe in front. */
const FORMULA = /^[=+\-@\t\r]/;

export function csvCell(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
