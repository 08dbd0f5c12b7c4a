import { format } from 'node:util';
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';
import * as chai from 'chai';

/**
 * What the tests import from vitest, for a process in which vitest itself does not run: it notes the tests down, so
 * that any of them can be run at any time. `expect` is vitest's own.
 */

export interface NotedTest {
  /** Its own name after those it stands in. */
  readonly name: string;
  readonly run: () => unknown;
}

type Body = () => unknown;
type EachBody = (...args: readonly never[]) => unknown;

/** What a test file holds. */
export interface NotedFile {
  readonly tests: readonly NotedTest[];
  /** To be called when no more of its tests will run. */
  readonly clearAway: readonly Body[];
}

interface Notes extends NotedFile {
  readonly tests: NotedTest[];
  readonly clearAway: Body[];
  /** Bodies of the outermost `describe`, which run when the whole file has been read, as vitest does it. */
  readonly later: Body[];
  readonly names: string[];
}

let notes: Notes = { tests: [], clearAway: [], later: [], names: [] };

/** What reading a test file notes down. */
export function noteTests(readFile: () => void): NotedFile {
  const own: Notes = { tests: [], clearAway: [], later: [], names: [] };
  notes = own;
  readFile();
  for (const body of own.later) body();
  return own;
}

function noteTest(name: string, run: Body): void {
  notes.tests.push({ name: [...notes.names, name].join(' > '), run });
}

function noteGroup(name: string, body: Body): void {
  const own = notes;
  const read = () => {
    own.names.push(name);
    body();
    own.names.pop();
  };
  if (own.names.length === 0) own.later.push(read);
  else read();
}

const withEach = (note: (name: string, body: Body) => void) =>
  Object.assign(note, {
    each: (cases: readonly unknown[]) => (name: string, body: EachBody) => {
      for (const one of cases) {
        const args = Array.isArray(one) ? one : [one];
        note(nameOf(name, args), () => body(...(args as never[])));
      }
    },
  });

/** `$name` is that field of the case, `%s` its next part. */
function nameOf(name: string, args: readonly unknown[]): string {
  const [first] = args;
  const named = name.replaceAll(/\$(\w+)/g, (whole, field: string) =>
    typeof first === 'object' && first !== null && field in first
      ? String((first as Readonly<Record<string, unknown>>)[field])
      : whole,
  );
  return format(named, ...args.slice(0, named.split('%s').length - 1));
}

export const describe = withEach(noteGroup);
export const it = withEach(noteTest);

export function afterAll(body: Body): void {
  notes.clearAway.push(body);
}

/** No test that is noted down here makes anything that has to be cleared away at once. */
export function onTestFinished(): void {}

/** What a test ends with that can't go on: an outside program that it needs is missing. */
export const LEFT_OUT = Symbol('left out');

const skip = (): never => {
  throw LEFT_OUT;
};
export const TestRunner = { getCurrentTest: () => ({ context: { skip } }) };

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

const plainExpect = (value: unknown, message?: string) => chai.expect(value, message);
const asymmetric: object = Reflect.get(globalThis, ASYMMETRIC_MATCHERS_OBJECT);
export const expect = Object.assign(plainExpect, chai.expect, asymmetric);
setState({ assertionCalls: 0, isExpectingAssertions: false }, expect as never);
Reflect.set(globalThis, GLOBAL_EXPECT, expect);
