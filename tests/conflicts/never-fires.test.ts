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
