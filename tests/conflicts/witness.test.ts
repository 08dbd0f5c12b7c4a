import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkConflicts } from '../../src/checks/conflicts.js';
import type { Finding, WitnessStep } from '../../src/findings/finding.js';
import type { SourceFile } from '../../src/findings/place.js';
import { createReport } from '../../src/findings/report.js';
import {
  createPlay,
  enterPlay,
  type Play,
  type PlayInput,
  type PlayState,
  stepPlay,
} from '../../src/gestures/play.js';
import {
  isTwoPosition,
  type Position,
  SWITCH_NAMES,
  type TwoPositionSwitchName,
} from '../../src/hardware/switches.js';
import type { Mode, Scheme, Setting } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';
import { listCases, readMarked } from '../support/cases.js';

/** What the steps of a witness must show, by rule: `x` and `y` are the finding’s actions. */
const SHOWS: Readonly<Record<string, (steps: readonly WitnessStep[], x: string, y: string) => void>> = {
  'same-moment': meet,
  'can-coincide': meet,
  'on-the-way': follow,
  'in-passing': follow,
  'order-matters': follow,
  'knock-on': follow,
  aftermath: (steps, x, y) => {
    expect(steps.at(-1)?.engaged).toEqual([]);
    expect(steps.at(-1)?.fires).toContain(x);
    expect(steps.at(-2)?.fires).toContain(y);
    expect(steps.slice(0, -1).flatMap(({ fires }) => fires)).not.toContain(x);
  },
  'carry-over': (steps, x, y) => {
    expect(steps.at(-2)?.fires).toContain(x);
    expect(steps.at(-1)?.fires).toContain(y);
  },
  'dead-zone': (steps, x, y) => {
    expect(steps.at(-1)?.engaged).toEqual([]);
    for (const { fires } of steps) expect(fires).not.toEqual(expect.arrayContaining([x]));
    for (const { fires } of steps) expect(fires).not.toEqual(expect.arrayContaining([y]));
  },
};

function meet(steps: readonly WitnessStep[], x: string, y: string): void {
  expect(steps.at(-1)?.fires).toEqual(expect.arrayContaining([x, y]));
}

function follow(steps: readonly WitnessStep[], x: string, y: string): void {
  expect(steps.slice(0, -1).flatMap(({ fires }) => fires)).toContain(x);
  expect(steps.at(-1)?.fires).toContain(y);
}

interface Shown {
  readonly name: string;
  readonly scheme: Scheme;
  readonly finding: Finding;
}

/** Every finding of this family in the cases of its rules. */
function findingsInCases(): readonly Shown[] {
  return listCases()
    .filter(({ rule }) => Object.hasOwn(SHOWS, rule))
    .flatMap(({ rule, name, folder }) => {
      const files = readdirSync(folder)
        .filter(file => file.endsWith('.md'))
        .sort();
      const read = files.map(file => readMarked(file, readFileSync(join(folder, file), 'utf8')).file);
      const { scheme, findings } = checked(read);
      return findings
        .filter(finding => Object.hasOwn(SHOWS, finding.rule))
        .map(finding => ({
          name: `${rule}/${name}: ${finding.rule}`,
          // Leaving the mode is not simulated, so that such a witness is replayed without any `go to`.
          scheme: finding.rule === 'carry-over' ? scheme : checked(read.map(withoutGoTo)).scheme,
          finding,
        }));
    });
}

function checked(files: readonly SourceFile[]) {
  const { report, findings } = createReport();
  const scheme = readScheme(files, report);
  if (scheme === null) throw new Error('no scheme');
  checkConflicts(scheme, report);
  return { scheme, findings };
}

const withoutGoTo = ({ path, text }: SourceFile): SourceFile => ({
  path,
  text: text.replaceAll(/(; )?go to \w+/g, ''),
});

describe('a witness shows what the message says', () => {
  it.each(findingsInCases())('$name', ({ scheme, finding }) => {
    const { witness, actions = [], rule } = finding;
    const [x = '', y = ''] = actions;
    if (witness === undefined) throw new Error('no witness');
    expect(witness.steps.map(({ read }) => read)).toEqual(witness.steps.map((_, index) => index));
    SHOWS[rule]?.(witness.steps, x, y);
    expect(worldsThatReplay(scheme, finding, witness.steps)).toBeGreaterThan(0);
  });
});

/** In how many settings of the game a play, given what is engaged, fires what the witness says: read by read. */
function worldsThatReplay(scheme: Scheme, finding: Finding, steps: readonly WitnessStep[]): number {
  const seats = scheme.seats.find(({ name }) => finding.seats?.includes(name));
  const standard = scheme.standards.find(({ name }) => name === finding.witness?.standard);
  const profile = scheme.consoles.find(({ name }) => finding.consoles?.includes(name) ?? true);
  if (seats === undefined || standard === undefined || profile === undefined) throw new Error('nowhere');
  const play = createPlay({ scheme, seats, profile, standard });
  const modes =
    finding.rule === 'carry-over' ? scheme.modes : scheme.modes.filter(({ name }) => name === finding.mode);
  return modes.flatMap(mode =>
    assignments(scheme.settings).filter(values => replays(play, mode, values, steps)),
  ).length;
}

function assignments(settings: readonly Setting[]): readonly ReadonlyMap<Setting, string>[] {
  return settings.reduce<readonly ReadonlyMap<Setting, string>[]>(
    (all, setting) =>
      all.flatMap(values => setting.values.map(value => new Map([...values, [setting, value]]))),
    [new Map()],
  );
}

function replays(
  play: Play,
  mode: Mode,
  values: ReadonlyMap<Setting, string>,
  steps: readonly WitnessStep[],
): boolean {
  let state: PlayState = enterPlay(play, mode, values);
  const standing = positionsFor(values);
  const turned: Record<string, number> = {};
  return steps.every(({ engaged, fires }) => {
    for (const name of engaged) if (/ (?:paddle|wheel)$/.test(name)) turned[name] = (turned[name] ?? 0) + 1;
    const { positions, ...input } = inputOf(engaged);
    // A switch stands where it gives its settings the values until the witness moves it.
    Object.assign(standing, positions);
    const step = stepPlay(play, state, { ...input, positions: standing, turned: { ...turned } });
    state = step.state;
    const fired = [...new Set(step.fired.map(({ actionName }) => actionName))];
    return JSON.stringify(fired) === JSON.stringify(fires);
  });
}

function positionsFor(
  values: ReadonlyMap<Setting, string>,
): Partial<Record<TwoPositionSwitchName, Position>> {
  const given = [...values].flatMap(([{ setBy }, value]) => {
    if (setBy.kind !== 'switch') return [];
    const [position] = [...setBy.values].find(([, each]) => each === value) ?? [];
    return position === undefined ? [] : [[setBy.name, position] as const];
  });
  return Object.fromEntries(given);
}

function inputOf(engaged: readonly string[]): PlayInput {
  const positions: Partial<Record<TwoPositionSwitchName, Position>> = {};
  for (const name of SWITCH_NAMES) {
    const moved = engaged.find(words => isTwoPosition(name) && words.startsWith(`${name} `));
    if (moved !== undefined && isTwoPosition(name))
      positions[name] = moved.slice(name.length + 1) as Position;
  }
  return { engaged: new Set(engaged), positions };
}
