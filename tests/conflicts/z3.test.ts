import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canFire, judgePair } from '../../src/checks/conflicts/pair.js';
import type { BrutePair } from '../support/brute-force.js';
import { momentaryPairs, programOf } from '../support/random-pairs.js';
import { scriptFor } from '../support/smt.js';
import { claimsOf } from '../support/smt-claims.js';
import { tool } from '../support/tools.js';

/**
 * Z3 (a general-purpose solver, SMT-LIB 2 text) on the definitions of the design page by bounded unrolling: for
 * each pair, what the search says becomes claims that must be satisfiable, or must not.
 */
describe('a solver agrees with the search', () => {
  it.each([
    { name: 'on one control', contacts: 1, reads: 12, pairs: 150, seed: 1 },
    { name: 'on chords of two', contacts: 2, reads: 12, pairs: 120, seed: 2 },
    { name: 'on chords of three', contacts: 3, reads: 5, pairs: 80, seed: 3 },
  ])('$name, $pairs pairs', ({ contacts, reads, pairs, seed }) => {
    const z3 = tool('z3');
    const sample = fc
      .sample(momentaryPairs(contacts, reads), { numRuns: 4 * pairs, seed })
      .filter(isLive)
      .slice(0, pairs);
    expect(sample).toHaveLength(pairs);
    const claims = sample.flatMap(pair => claimsOf(pair, judgePair(programOf(pair)), 2 * reads + 5));
    const { stdout, error } = spawnSync(z3, ['-in'], {
      input: scriptFor(claims),
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    });
    expect(error).toBeUndefined();
    const answers = stdout.trim().split('\n');
    expect(answers).toHaveLength(claims.length);
    const wrong = claims.filter((claim, index) => answers[index] !== (claim.holds ? 'sat' : 'unsat'));
    expect(wrong.map(({ says, pair }) => `${says}: ${JSON.stringify(pair)}`)).toEqual([]);
  });
});

function isLive(pair: BrutePair): boolean {
  const program = programOf(pair);
  if (program.y === null) return false;
  const holdBacks = program.holdBacks.map(hold => ({
    ...hold,
    target: hold.target === 'x' ? ('y' as const) : ('x' as const),
  }));
  return canFire(program) && canFire({ ...program, x: program.y, y: program.x, holdBacks });
}
