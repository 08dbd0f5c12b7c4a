import { describe, expect, it } from 'vitest';
import { afterEffects, chainOf, holdsIn } from '../../src/checks/conflicts/value-chain.js';
import type { SourceOf } from '../../src/checks/conflicts/worlds.js';
import { createReport } from '../../src/findings/report.js';
import type { SettingSource } from '../../src/gestures/settings.js';
import type { Condition, Effect, Setting } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';

const TEXT = `# Moss Walk

Two settings, one of them stepped.

## Game

| Item | Value |
| --- | --- |
| Short name | MW |

## Seats

| Seats | Players | Left port | Right port |
| --- | --- | --- | --- |
| Solo | 1 | joystick | empty |

## Settings

| Setting | Values | Starts as | Set by |
| --- | --- | --- | --- |
| Level | 1 to 3 | 2 | game |
| Lamp | out, lit | out | game |

## Actions

| Action | Say it as |
| --- | --- |
| Pick | Pick one |
| Swing | Swing |

## Mode: Garden

| Who | Action | Control | Gesture | When | Then |
| --- | --- | --- | --- | --- | --- |
| each | Pick | button | press | Level is not 3 | Level: next; Lamp: lit; go to Garden |
| each | Swing | stick up | press | Lamp is lit | |
`;

/** The two settings, the first row's `Then`, and both rows' `When`. */
function parts() {
  const scheme = readScheme([{ path: 'scheme.md', text: TEXT }], createReport().report);
  const [pick, swing] = scheme?.modes[0]?.rows ?? [];
  const [level, lamp] = scheme?.settings ?? [];
  if (pick === undefined || swing === undefined || level === undefined || lamp === undefined)
    throw new Error('The scheme was not read.');
  return {
    level,
    lamp,
    effects: pick.effects,
    asked: [...pick.conditions, ...swing.conditions],
    pick,
    swing,
  };
}

/** Told by setting; asking for anything else is a mistake of the caller. */
const sourcesOf =
  (sources: ReadonlyMap<Setting, SettingSource>): SourceOf =>
  setting => {
    const source = sources.get(setting);
    if (source === undefined) throw new Error('Asked for a setting that there is not.');
    return source;
  };

const game = (startsAs: string): SettingSource => ({ kind: 'game', startsAs });

const inWords = (values: readonly ReadonlyMap<Setting, string>[]): readonly string[] =>
  values.map(value => [...value.values()].join(' '));

/** Where each of the values leads, in words. */
function chainInWords(conditions: readonly Condition[], effects: readonly Effect[], sourceOf: SourceOf) {
  const { values, next } = chainOf(conditions, effects, sourceOf);
  const words = inWords(values);
  return words.map((word, index) => `${word} → ${words[next[index] ?? -1]}`);
}

describe('a value chain', () => {
  it('has every value of what is stepped and set, and where the Then leads from each', () => {
    const { level, lamp, effects, asked } = parts();
    const sourceOf = sourcesOf(
      new Map([
        [level, game('2')],
        [lamp, game('out')],
      ]),
    );
    expect(chainInWords(asked, effects, sourceOf)).toEqual([
      '2 out → 3 lit',
      '2 lit → 3 lit',
      '1 out → 2 lit',
      '1 lit → 2 lit',
      '3 out → 1 lit',
      '3 lit → 1 lit',
    ]);
  });

  it('leaves alone what the console keeps from changing', () => {
    const { level, lamp, effects, asked } = parts();
    const sourceOf = sourcesOf(
      new Map<Setting, SettingSource>([
        [level, game('2')],
        [lamp, { kind: 'constant', value: 'out' }],
      ]),
    );
    expect(chainInWords(asked, effects, sourceOf)).toEqual([
      '2 out → 3 out',
      '1 out → 2 out',
      '3 out → 1 out',
    ]);
  });

  it('leaves alone what a switch gives', () => {
    const { level, lamp, effects, asked } = parts();
    const values = new Map([
      ['B', 'out'],
      ['A', 'lit'],
    ] as const);
    const sourceOf = sourcesOf(
      new Map<Setting, SettingSource>([
        [level, game('2')],
        [lamp, { kind: 'switch', name: 'left difficulty', values }],
      ]),
    );
    expect(chainInWords(asked, effects, sourceOf)).toEqual([
      '2 out → 3 out',
      '2 lit → 3 lit',
      '1 out → 2 out',
      '1 lit → 2 lit',
      '3 out → 1 out',
      '3 lit → 1 lit',
    ]);
  });

  it('tells of each value whether a When holds', () => {
    const { level, lamp, effects, asked, pick, swing } = parts();
    const sourceOf = sourcesOf(
      new Map([
        [level, game('2')],
        [lamp, game('out')],
      ]),
    );
    const chain = chainOf(asked, effects, sourceOf);
    expect(holdsIn(chain, pick.conditions)).toEqual([true, true, true, true, false, false]);
    expect(holdsIn(chain, swing.conditions)).toEqual([false, true, false, true, false, true]);
  });

  it('changes only values that it is told may change, and adds none', () => {
    const { level, lamp, effects } = parts();
    expect([...afterEffects(new Map([[level, '3']]), effects, new Set([level, lamp]))]).toEqual([
      [level, '1'],
    ]);
    expect([...afterEffects(new Map([[level, '3']]), effects, new Set([lamp]))]).toEqual([[level, '3']]);
  });
});
