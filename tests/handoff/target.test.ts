import { expect, test } from 'vitest';
import { handoffFacts } from '../../src/handoff/index.js';
import { TARGET_LIMITS, TARGET_SCHEME } from '../support/target-scheme.js';
import { readText } from './schemes.js';

test('two joysticks, taps and holds, three switches: few cycles, few bytes', () => {
  const facts = handoffFacts(readText(TARGET_SCHEME));
  expect(facts.modes.length).toBeGreaterThan(0);
  for (const { cycles, ramBytes } of facts.modes) {
    expect(cycles).toBeLessThanOrEqual(TARGET_LIMITS.cycles);
    expect(ramBytes).toBeLessThanOrEqual(TARGET_LIMITS.ramBytes);
  }
});
