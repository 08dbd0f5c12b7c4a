import { describe, expect, test } from 'vitest';
import { checkConflicts } from '../../src/checks/conflicts.js';
import { createReport } from '../../src/findings/report.js';
import { createHandoff } from '../../src/handoff/create.js';
import { layOutClass } from '../../src/handoff/layout.js';
import type { Handoff } from '../../src/handoff/model.js';
import type { ConsoleClass } from '../../src/handoff/units.js';
import type { TvStandard } from '../../src/hardware/clocks.js';
import type { Scheme } from '../../src/language/model.js';
import { createCpu } from '../support/cpu.js';
import { createRandom, type Random } from '../support/random.js';
import { assemble, type Program, runCalls, WINDOW_START } from '../support/sim65.js';
import { TARGET_SCHEME } from '../support/target-scheme.js';
import { tool } from '../support/tools.js';
import { exampleSchemes, partOf, randomRead, readText } from './schemes.js';
import { busyCalls, type Expected, recordSession, type SessionChoice, wildHands } from './session.js';

/**
 * The generated routine against the gesture engine, read by read. It is assembled by ca65 and run under sim65
 * (both of cc65), with RAM in place of the registers.
 */

interface Subject {
  readonly name: string;
  readonly handoff: Handoff;
  readonly consoles: ConsoleClass;
  readonly standard: TvStandard;
  readonly random: Random;
}

const RANDOM_SCHEMES = 300;
const IN_BATCH = 30;
const READS = 120;
const RAM = 0x80;

function randomSubject(seed: number): Subject {
  const random = createRandom(seed + 10_000);
  const handoff = createHandoff(randomRead(seed));
  const consoles = random.pick(handoff.classes);
  return {
    name: `random ${seed}`,
    handoff,
    consoles,
    standard: random.pick(handoff.scheme.standards),
    random,
  };
}

/** Every class of consoles on every standard. */
function subjectsOf(name: string, scheme: Scheme): readonly Subject[] {
  const handoff = createHandoff(scheme);
  return handoff.classes.flatMap(consoles =>
    scheme.standards.map(standard => ({ name, handoff, consoles, standard, random: createRandom(1) })),
  );
}

const exampleSubjects = () => exampleSchemes().flatMap(({ name, scheme }) => subjectsOf(name, scheme));

function build(subjects: readonly Subject[]): Program {
  const parts = subjects.map(({ handoff, consoles, standard }) => partOf(handoff, consoles, standard));
  return assemble(tool('ca65'), tool('ld65'), parts);
}

function choiceOf(
  { handoff, consoles, standard, random }: Subject,
  program: Program,
  ...seats: readonly (typeof handoff.scheme.seats)[number][]
): SessionChoice {
  const row = seats[0] ?? random.pick(handoff.scheme.startMode.seats);
  return {
    handoff,
    seats: row,
    profile: random.pick(consoles.profiles),
    standard,
    labels: program.labels,
    ram: RAM,
  };
}

/** A session from power-on and one at rest in each mode. */
function sessionsOf(subject: Subject, program: Program): readonly Expected[] {
  const { handoff, random } = subject;
  const { scheme } = handoff;
  const choice = choiceOf(subject, program);
  const begun = recordSession(choice, wildHands(scheme, choice, random), READS, random);
  const entered = scheme.modes.flatMap(mode =>
    mode.seats.flatMap(seats => {
      const own = choiceOf(subject, program, seats);
      const values = new Map(scheme.settings.map(setting => [setting, random.pick(setting.values)]));
      return recordSession(own, wildHands(scheme, own, random), READS, random, { mode, values });
    }),
  );
  return [...begun, ...entered];
}

/** The first call that leaves something else than it must, in words. */
function firstDifference(calls: readonly Expected[], windows: readonly Uint8Array[]): string | null {
  for (const [index, { fired, words, routine }] of calls.entries()) {
    if (fired === null) continue;
    const got = [...(windows[index] ?? [])].slice(0, fired.length);
    if (got.join() !== fired.join())
      return `${routine?.tag ?? ''}, ${words}: ${fired.join()} expected, ${got.join()} left`;
  }
  return null;
}

describe('against the gesture engine, under sim65', () => {
  test('the example schemes, on every class of consoles and every standard', () => {
    for (const subject of exampleSubjects()) {
      const program = build([subject]);
      const calls = sessionsOf(subject, program);
      const { windows } = runCalls(tool('sim65'), program, calls);
      program.remove();
      expect(firstDifference(calls, windows), subject.name).toBeNull();
    }
  });

  const batches = Array.from({ length: RANDOM_SCHEMES / IN_BATCH }, (_, number) => number * IN_BATCH);
  test.each(batches)('random schemes from %i on', from => {
    const subjects = Array.from({ length: IN_BATCH }, (_, index) => randomSubject(from + index));
    const program = build(subjects);
    const sessions = subjects.map(subject => sessionsOf(subject, program));
    const { windows, cycles } = runCalls(tool('sim65'), program, sessions.flat());
    let start = 0;
    sessions.forEach((calls, index) => {
      expect(
        firstDifference(calls, windows.slice(start, start + calls.length)),
        subjects[index]?.name,
      ).toBeNull();
      start += calls.length;
    });
    expect(cycles).toBeGreaterThan(0);
    program.remove();
  });

  test('sees a routine that is wrong in one bit', () => {
    const subject = randomSubject(1);
    const program = build([subject]);
    const calls = sessionsOf(subject, program);
    const { windows } = runCalls(tool('sim65'), program, calls);
    program.remove();
    const at = calls.findLastIndex(({ fired }) => fired !== null);
    const wrong = windows.map((bytes, index) => (index === at ? bytes.map(byte => byte ^ 1) : bytes));
    expect(firstDifference(calls, wrong)).not.toBeNull();
  });
});

/** The most cycles a read takes in some busy rounds; the CPU model is held against sim65 in cpu.test.ts. */
function worstSeen(
  choice: SessionChoice,
  program: Program,
  cost: ReturnType<typeof layOutClass>[number],
  random: Random,
) {
  const cpu = createCpu(program.image.slice());
  const { mode } = cost.routine.unit;
  let worst = 0;
  // Long ways that are seldom gone are sought for longer, where else the bound would seem loose.
  const isSought = (attempt: number) => cost.cycles > worst * (attempt < 40 ? 1.03 : 1.1);
  for (let attempt = 0; attempt < 400 && isSought(attempt); attempt++) {
    let sum = 0;
    for (const { pokes, address, isScan, routine } of busyCalls(choice, mode, random, 6)) {
      for (const [where, value] of pokes) cpu.memory[where] = value;
      const cycles = cpu.call(address) + (isScan ? 0 : sum);
      sum = isScan ? sum + cycles : 0;
      if (routine !== null && !isScan) worst = Math.max(worst, cycles);
    }
  }
  return worst;
}

/** A row that never fires is an error, so nothing is built of it; its part of the worst case is never seen. */
function hasDeadRow({ handoff }: Subject, mode: string): boolean {
  const { report, findings } = createReport();
  checkConflicts(handoff.scheme, report);
  return findings.some(finding => finding.rule === 'never-fires' && finding.mode === mode);
}

describe('stated cycles', () => {
  const subjects = () => [
    ...exampleSubjects(),
    ...subjectsOf('the target mode', readText(TARGET_SCHEME)),
    ...Array.from({ length: 100 }, (_, seed) => randomSubject(seed)),
  ];

  test('are never exceeded, and at most 10 % above the worst seen', () => {
    const loose: string[] = [];
    for (const subject of subjects()) {
      const program = build([subject]);
      for (const cost of layOutClass(subject.handoff, subject.consoles)) {
        const choice = choiceOf(subject, program, cost.routine.unit.seats);
        const worst = worstSeen(choice, program, cost, subject.random);
        const words = `${subject.name} ${cost.routine.tag}: ${cost.cycles} stated, ${worst} seen`;
        expect(worst, words).toBeLessThanOrEqual(cost.cycles);
        if (cost.cycles > worst * 1.1 && !hasDeadRow(subject, cost.routine.unit.mode.name)) loose.push(words);
      }
      program.remove();
    }
    expect(loose).toEqual([]);
  });

  test('lie where the assembler puts the code: each label at the offset they were counted for', () => {
    for (const subject of subjects().slice(0, 20)) {
      const program = build([subject]);
      const costs = layOutClass(subject.handoff, subject.consoles);
      const placed = costs.flatMap(cost => [cost.read, cost.enter, ...cost.scan]);
      const origins = placed.map(({ piece, offset }) => (program.labels.get(piece.label) ?? -1) - offset);
      program.remove();
      expect(new Set(origins).size).toBe(1);
      expect((origins[0] ?? 1) % 256).toBe(0);
    }
  });
});

test('the harness looks at the routine’s first bytes', () => {
  expect(WINDOW_START).toBe(RAM);
});
