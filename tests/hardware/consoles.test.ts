import { describe, expect, it } from 'vitest';
import { CONSOLES, type SwitchState } from '../../src/hardware/consoles.js';
import { cite } from './cite.js';

const front: SwitchState = { kind: 'front' };
const rear: SwitchState = { kind: 'rear' };
const atB: SwitchState = { kind: 'fixed', position: 'B' };

/** The built-in profiles differ in their difficulty switches alone (common practice, no source). */
const ROWS: readonly (readonly [string, SwitchState])[] = [
  ['six-switch', front],
  ['four-switch', rear],
  ['no-difficulty', atB],
];

describe('the console profiles', () => {
  it('are these three, the fullest panel first', () => {
    expect(CONSOLES.map(({ name }) => name)).toEqual(ROWS.map(([name]) => name));
  });

  it.each(ROWS)('%s has its difficulty switches in their place', (wanted, difficulty) => {
    const profile = CONSOLES.find(({ name }) => name === wanted);
    expect(profile?.switches).toStrictEqual({
      'TV type': front,
      'left difficulty': difficulty,
      'right difficulty': difficulty,
      SELECT: front,
      RESET: front,
    });
    expect(profile && cite(profile.source)).toBe('P');
  });
});
