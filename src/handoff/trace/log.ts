import { nearest } from '../../language/spelling.js';
import { INPUT_REGISTERS, type InputRegister, type RegisterValues } from '../registers.js';
import { VECTORS_FORMAT } from '../vectors/write.js';
import { type Fault, sentencesOf } from './log-faults.js';

/** One read of a log: what was in the registers, and what the programmer's build says it did. */
export interface LogRead {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly values: RegisterValues;
  /** By keypad row: what differs while it is driven. */
  readonly rows: ReadonlyMap<number, Partial<RegisterValues>>;
  /** Paddle positions by contact id. */
  readonly paddles: ReadonlyMap<string, number>;
  /** Symbols or names of actions. */
  readonly fires: readonly string[];
  /** The mode the read was made in, if the log says; a name or a symbol. */
  readonly mode: string | null;
  /** Values of settings before the read, where the log says. */
  readonly settings: ReadonlyMap<string, string>;
}

/** What a log was made on, where its first read says so (`console`, `seats`, `standard`). */
export interface LogOrigin {
  readonly seats?: string;
  readonly console?: string;
  readonly standard?: string;
}

export interface Log {
  readonly origin: LogOrigin;
  readonly reads: readonly LogRead[];
  /** What can't be read of it, a sentence each. */
  readonly faults: readonly string[];
}

/**
 * Reads a log: CSV with a line of headings, or an object a line (JSON lines). Columns or members: the registers
 * (`$0F`, `0x0F` or 15; one that is left out stays as it was, at first at rest), `fires`, and if the log has
 * them `mode`, `settings`, `rows`, `paddles`, `times`, written as in `vectors.csv` or `vectors.json`; in the first
 * read also `console`, `seats` and `standard`.
 */
export function readLog(text: string): Log {
  const clean = text.replace(/^\uFEFF/, '');
  const first = clean.trimStart().slice(0, 1);
  const records = first === '{' || first === '[' ? jsonRecords(clean) : csvRecords(clean);
  const refusal = refusalOf(records);
  if (refusal !== null) return { origin: {}, reads: [], faults: [refusal] };
  const heads = new Set(records.list.flatMap(({ fields }) => [...fields.keys()]));
  const faults = [...records.faults, ...(records.faults.length > 0 ? [] : faultsOfHeads(heads))];
  const reads: LogRead[] = [];
  let before: RegisterValues = REST;
  for (const { line, fields } of records.list) {
    const read = readRecord(line, fields, before, faults);
    before = read.values;
    const times = fields.has('times') ? (numberOf(fields.get('times')) ?? 1) : 1;
    if (times > MOST_TIMES)
      faults.push({ kind: 'times', text: `Line ${line}: ${times} reads in one line are too many.` });
    else for (let count = 0; count < times; count++) reads.push(read);
  }
  return { origin: originOf(records.list[0]?.fields), reads, faults: sentencesOf(faults) };
}

/** Why a file is no log at all; null where something of it can be read, or it is empty. */
function refusalOf({ list, faults }: Records): string | null {
  const [first] = list;
  if (first === undefined) return faults.length > 1 ? 'No line of this file is a JSON object.' : null;
  const { fields } = first;
  if (fields.get('format') === VECTORS_FORMAT.format || (fields.has('vector') && fields.has('kind')))
    return VECTORS;
  return list.some(record => hasRegister(record.fields)) ? null : NO_REGISTER;
}

const hasRegister = (fields: Fields): boolean => {
  const named = registerFields(fields);
  return INPUT_REGISTERS.some(symbol => named.has(symbol.toLowerCase()));
};

const ORIGIN = ['seats', 'console', 'standard'] as const;

function originOf(fields: Fields | undefined): LogOrigin {
  const said = ORIGIN.flatMap((name): [string, string][] => {
    const value = fields?.get(name);
    return typeof value === 'string' && value.trim() !== '' ? [[name, value.trim()]] : [];
  });
  return Object.fromEntries(said);
}

const HEADS = [...INPUT_REGISTERS, 'fires', 'mode', 'settings', 'rows', 'paddles', 'times', ...ORIGIN];

/** Columns (or members) that are nearly one that is looked at, and what without which nothing is compared. */
function faultsOfHeads(heads: ReadonlySet<string>): readonly Fault[] {
  if (heads.size === 0) return [{ kind: 'no read', text: 'There is no read in the log.' }];
  const known = new Set(HEADS.map(name => name.toLowerCase()));
  const wrong = [...heads].flatMap(head => {
    const meant = known.has(head) || PLAIN_HEADS.includes(head) ? null : nearest(head, HEADS);
    return meant === null || heads.has(meant.toLowerCase())
      ? []
      : [{ kind: head, text: `“${head}” is nothing that a log has. Did you mean “${meant}”?` }];
  });
  return [
    ...wrong,
    ...(heads.has('fires')
      ? []
      : [
          {
            kind: 'fires',
            text: 'The log does not say what the build did: `fires` is missing, so nothing can be compared.',
          },
        ]),
  ];
}

const VECTORS =
  'These are the acceptance vectors of a scheme, not a log of a build; the appendix says how they are run.';

const NO_REGISTER = 'This is no log: nothing in it names a register (SWCHA, SWCHB, INPT0 to INPT5).';
const NO_HEADS = 'The first line names no register: SWCHA, SWCHB, INPT0 to INPT5.';
const ARRAY = 'This is a JSON array; a log has a JSON object on each line, or is CSV.';

/** What a log often holds besides; it is not looked at. */
const PLAIN_HEADS: readonly string[] = [
  'read',
  'reads',
  'frame',
  'line',
  'time',
  'step',
  'engaged',
  'values',
];

const MOST_TIMES = 1_000_000;
const REST: RegisterValues = {
  SWCHA: 0xff,
  SWCHB: 0x0b,
  INPT0: 0,
  INPT1: 0,
  INPT2: 0,
  INPT3: 0,
  INPT4: 0x80,
  INPT5: 0x80,
};

/** Cells or members by name in small letters. */
type Fields = ReadonlyMap<string, unknown>;

interface Records {
  readonly list: readonly { readonly line: number; readonly fields: Fields }[];
  readonly faults: readonly Fault[];
}

/** An object a line; a file that is one object on many lines is one record. */
function jsonRecords(text: string): Records {
  const whole = parsed(text);
  if (Array.isArray(whole)) return { list: [], faults: [{ kind: 'array', text: ARRAY }] };
  if (typeof whole === 'object' && whole !== null)
    return { list: [{ line: 1, fields: fieldsOf(Object.entries(whole)) }], faults: [] };
  const list: { line: number; fields: Fields }[] = [];
  const faults: Fault[] = [];
  text.split(/\r\n|\n|\r/).forEach((row, index) => {
    if (row.trim() === '') return;
    const value = parsed(row);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      faults.push({ kind: 'object', text: `Line ${index + 1} is no JSON object.` });
      return;
    }
    list.push({ line: index + 1, fields: fieldsOf(Object.entries(value)) });
  });
  return { list, faults };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

const fieldsOf = (entries: readonly (readonly [string, unknown])[]): Fields =>
  new Map(entries.map(([name, value]) => [name.trim().toLowerCase(), value]));

function csvRecords(text: string): Records {
  const [heads, ...rows] = csvRows(text);
  if (heads === undefined) return { list: [], faults: [{ kind: 'empty', text: 'The log is empty.' }] };
  const names = heads.cells.map(name => name.trim().toLowerCase());
  if (!names.some(name => INPUT_REGISTERS.some(symbol => symbol.toLowerCase() === name)))
    return { list: [], faults: [{ kind: 'heads', text: NO_HEADS }] };
  const list = rows.map(({ line, cells }) => ({
    line,
    fields: fieldsOf(names.map((name, index) => [name, cells[index] ?? ''] as const)),
  }));
  const uneven = rows.filter(({ cells }) => cells.length !== names.length);
  return {
    list,
    faults: uneven.map(({ line, cells }) => ({
      kind: 'cells',
      text: `Line ${line} has ${cells.length} cells, the first line ${names.length}.`,
    })),
  };
}

/** RFC 4180: cells in quotes may hold commas, line ends and doubled quotes. */
function csvRows(text: string): readonly { readonly line: number; readonly cells: readonly string[] }[] {
  const rows: { line: number; cells: string[] }[] = [];
  let line = 1;
  let row: string[] = [];
  let begun = 1;
  for (const match of text.matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n|\n|\r|$)/g)) {
    const [, cell = '', end = ''] = match;
    row.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
    line += (cell.match(/\n/g) ?? []).length;
    if (end === ',') continue;
    if (row.some(each => each.trim() !== '')) rows.push({ line: begun, cells: row });
    row = [];
    if (end === '') break;
    line++;
    begun = line;
  }
  return rows;
}

function readRecord(line: number, fields: Fields, before: RegisterValues, faults: Fault[]): LogRead {
  const values: Record<InputRegister, number> = { ...before };
  const inner = registerFields(fields);
  for (const symbol of INPUT_REGISTERS) {
    const given = inner.get(symbol.toLowerCase());
    if (given === undefined || given === '') continue;
    const number = numberOf(given);
    if (number === null || number > 0xff)
      faults.push({ kind: symbol, text: `Line ${line}: ${symbol} is no byte: ${String(given)}.` });
    else values[symbol] = number;
  }
  const mode = fields.get('mode');
  return {
    line,
    values,
    rows: rowsOf(fields.get('rows')),
    paddles: new Map(
      pairsOf(fields.get('paddles'), 'control', 'position').map(([name, value]) => [
        name,
        numberOf(value) ?? 0,
      ]),
    ),
    fires: listOf(fields.get('fires')),
    mode: typeof mode === 'string' && mode.trim() !== '' ? mode.trim() : null,
    settings: new Map(pairsOf(fields.get('settings'), 'setting', 'value')),
  };
}

/** Registers may stand in a member `values` of their own. */
function registerFields(fields: Fields): Fields {
  const nested = fields.get('values');
  return typeof nested === 'object' && nested !== null ? fieldsOf(Object.entries(nested)) : fields;
}

/** `$0F`, `0x0F`, `15`, 15; null for anything else. */
function numberOf(value: unknown): number | null {
  if (typeof value === 'number') return Number.isInteger(value) && value >= 0 ? value : null;
  if (typeof value !== 'string') return null;
  const found = /^\s*(?:(?:\$|0x)([0-9a-f]{1,6})|([0-9]{1,9}))\s*$/i.exec(value);
  if (found === null) return null;
  return found[1] === undefined ? Number(found[2]) : Number.parseInt(found[1], 16);
}

function listOf(value: unknown): readonly string[] {
  const list = Array.isArray(value) ? value.map(String) : typeof value === 'string' ? value.split(';') : [];
  return list.map(text => text.trim()).filter(text => text !== '');
}

/** `Chart: 3; Lamps: grey`, a list of objects, or an object. */
function pairsOf(value: unknown, nameKey: string, valueKey: string): readonly [string, string][] {
  if (Array.isArray(value)) {
    return value.flatMap((each): [string, string][] => {
      if (typeof each !== 'object' || each === null) return [];
      const entry = fieldsOf(Object.entries(each));
      return [[String(entry.get(nameKey) ?? ''), String(entry.get(valueKey) ?? '')]];
    });
  }
  if (typeof value === 'object' && value !== null)
    return Object.entries(value).map(([name, each]) => [name, String(each)]);
  if (typeof value !== 'string') return [];
  return value.split(';').flatMap((part): [string, string][] => {
    const colon = part.lastIndexOf(':');
    return colon < 0 ? [] : [[part.slice(0, colon).trim(), part.slice(colon + 1).trim()]];
  });
}

/** `row 1 INPT0=$00; row 2 …`, or a list as in `vectors.json`. */
function rowsOf(value: unknown): ReadonlyMap<number, Partial<RegisterValues>> {
  const rows = new Map<number, Partial<Record<InputRegister, number>>>();
  const put = (row: number, pairs: readonly (readonly [string, unknown])[]) => {
    const found: Partial<Record<InputRegister, number>> = {};
    for (const [name, given] of pairs) {
      const symbol = INPUT_REGISTERS.find(each => each === name.toUpperCase());
      const number = numberOf(given);
      if (symbol !== undefined && number !== null) found[symbol] = number;
    }
    rows.set(row, found);
  };
  if (Array.isArray(value)) {
    for (const each of value)
      if (typeof each === 'object' && each !== null && 'row' in each && 'values' in each)
        put(Number(each.row), Object.entries(each.values ?? {}));
  } else if (typeof value === 'string') {
    for (const part of value.split(';')) {
      const [, row, rest] = /^\s*row\s+([1-4])\s*(.*)$/i.exec(part) ?? [];
      if (row === undefined) continue;
      put(
        Number(row),
        (rest ?? '').split(/\s+/).map(pair => [pair.split('=')[0] ?? '', pair.split('=')[1]] as const),
      );
    }
  }
  return rows;
}
