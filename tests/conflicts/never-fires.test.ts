import { describe, expect, it } from 'vitest';
import { checkConflicts } from '../../src/checks/conflicts.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

function found(rows: readonly SmallRow[], options?: SmallOptions): readonly Finding[] {
  const { report, findings } = createReport();
  checkConflicts(smallScheme(rows, options), report);
  return findings;
}

/** Thirty-one controls on an own controller: more than a search can hold, and each on a line with all others. */
const LEVERS = Array.from({ length: 31 }, (_, index) => `lever ${index + 1}`);
const LEVER_BOARD = [
  '## Controllers\n\n| Controller | Control | Line |\n| --- | --- | --- |',
  ...LEVERS.map(lever => `| board | ${lever} | button |`),
].join('\n');

const rulesOf = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

const STEPS = { settings: ['Level | 1 to 8 | 1 | game', 'Lamp | out, lit | out | game'] };

describe('what never fires for a reason of another rule takes no part in this family’s rules', () => {
  const split: SmallRow = {
    action: 'Split',
    control: 'stick up + stick left',
    gesture: 'held',
    does: 'Level: next',
  };
  const askew = { ...split, control: 'stick up + stick down' };

  it('a chord of opposite directions', () => {
    expect(rulesOf(found([split], STEPS))).toEqual(['runaway']);
    expect(rulesOf(found([askew], STEPS))).toEqual([]);
    expect(rulesOf(found([{ ...askew, when: 'Lamp is lit' }], STEPS))).toEqual([]);
  });

  it('a position in which a console’s switch never is', () => {
    const options = { ...STEPS, game: { Consoles: 'six-switch, no-difficulty' } };
    const row: SmallRow = {
      who: 'anyone',
      action: 'Race',
      control: 'left difficulty',
      gesture: 'at A',
      does: 'Level: next',
    };
    for (const each of [row, { ...row, when: 'Lamp is lit' }]) {
      expect(found([each], options).map(({ rule, consoles }) => [rule, consoles])).toEqual([
        ['runaway', ['six-switch']],
      ]);
      const everywhere = found([{ ...each, gesture: 'at B' }], options);
      expect(everywhere.map(({ rule, consoles }) => [rule, consoles])).toEqual([['runaway', undefined]]);
    }
  });
});

describe('a chord of more controls than can be searched', () => {
  const options = { ...STEPS, seats: ['Solo | 1 | board | empty'], extra: LEVER_BOARD };
  const all: SmallRow = {
    action: 'Sway',
    control: LEVERS.join(' + '),
    gesture: 'held',
    does: 'Level: next',
  };

  it('counts as one that can fire', () => {
    expect(rulesOf(found([all], options))).toEqual(['runaway']);
    const withSwitch = { ...all, control: `${all.control} + RESET` };
    expect(rulesOf(found([withSwitch], options))).toEqual(['runaway']);
    const holder: SmallRow = { action: 'Hush', control: 'RESET', gesture: 'held', insteadOf: 'Sway' };
    expect(rulesOf(found([all, holder], options))).toEqual(['runaway']);
  });

  it('is not compared with its parts; these are compared', () => {
    const part: SmallRow = { action: 'Tug', control: 'lever 1', gesture: 'press' };
    expect(rulesOf(found([all, part], options))).toEqual(['runaway']);
    const clash = found([all, part, { ...part, action: 'Pull' }], options);
    expect(rulesOf(clash).toSorted()).toEqual(['runaway', 'same-moment']);
  });
});
