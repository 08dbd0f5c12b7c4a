import { describe, expect, it } from 'vitest';
import { settingSource, startPosition } from '../../src/gestures/settings.js';
import { BARE, fallbackSection, onBare, smallPlace } from './small-play.js';

const ROWS = [{ action: 'Hop', control: 'button', gesture: 'press' }];
const SETTINGS = [
  'Lamp | out, lit | out | game',
  'Tide | gentle, strong | gentle | left difficulty: B gentle, A strong',
];
const STRONG_TIDE = ['Tide | gentle, strong | strong | right difficulty: B gentle, A strong'];

function sourceOfTide(console: number, ...fallbacks: readonly string[]) {
  const extra = fallbacks.length === 0 ? '' : fallbackSection(...fallbacks);
  const { scheme, profile } = smallPlace(ROWS, onBare({ settings: SETTINGS, extra }), console);
  const tide = scheme.settings.find(({ name }) => name === 'Tide');
  if (tide === undefined) throw new Error('no tide');
  return settingSource(tide, scheme, profile);
}

describe('what decides a setting', () => {
  it('is the switch, where the console has it, whatever a fallback says', () => {
    expect(sourceOfTide(0, 'left difficulty | Tide | stays gentle')).toMatchObject({
      kind: 'switch',
      name: 'left difficulty',
    });
  });

  it('is the fixed position for good, where nothing else is said', () => {
    expect(sourceOfTide(BARE)).toEqual({ kind: 'constant', value: 'strong' });
  });

  it('is the value it stays at, where a fallback says so', () => {
    expect(sourceOfTide(BARE, 'left difficulty | Tide | stays gentle')).toEqual({
      kind: 'constant',
      value: 'gentle',
    });
  });

  it('is the game, from the fixed position on, where a fallback steps it', () => {
    expect(sourceOfTide(BARE, 'left difficulty | Tide | Yard: left stick up press')).toEqual({
      kind: 'game',
      startsAs: 'strong',
    });
  });

  it('is not a fallback for an action without the same switch', () => {
    expect(sourceOfTide(BARE, 'left difficulty | Hop | Yard: SELECT press')).toEqual({
      kind: 'constant',
      value: 'strong',
    });
  });
});

describe('a switch at power-on', () => {
  const positions = (console: number) => {
    const { scheme, profile } = smallPlace(ROWS, onBare({ settings: STRONG_TIDE }), console);
    return (['TV type', 'left difficulty', 'right difficulty'] as const).map(name =>
      startPosition(name, scheme, profile),
    );
  };

  it('is where its setting’s Starts as asks for it, else at COLOR and B', () => {
    expect(positions(0)).toEqual(['COLOR', 'B', 'A']);
  });

  it('is where the console fixes it, even against Starts as', () => {
    expect(positions(BARE)).toEqual(['COLOR', 'A', 'B']);
  });
});
