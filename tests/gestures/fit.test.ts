import { describe, expect, it } from 'vitest';
import { type Contact, controlContact, switchContact } from '../../src/gestures/contacts.js';
import { fitsParts, positionOf } from '../../src/gestures/fit.js';
import { CONTROLLERS } from '../../src/hardware/controllers.js';
import type { Gesture } from '../../src/language/model.js';

function contact(controllerName: string, name: string): Contact {
  const controller = CONTROLLERS.find(candidate => candidate.name === controllerName);
  const control = controller?.controls.find(candidate => candidate.name === name);
  if (controller === undefined || control === undefined) throw new Error(`no ${name}`);
  return controlContact('left', controller, control);
}

const BUTTON = contact('joystick', 'button');
const UP = contact('joystick', 'stick up');
const PADDLE = contact('paddles', 'paddle');
const RESET = switchContact('RESET');
const DIFFICULTY = switchContact('left difficulty');
const TV = switchContact('TV type');

const press: Gesture = { kind: 'press' };
const turn: Gesture = { kind: 'turn' };
const flip: Gesture = { kind: 'flip' };
const atA: Gesture = { kind: 'at', position: 'A' };
const toColor: Gesture = { kind: 'flip to', position: 'COLOR' };

/** The column `On` of the table of gestures. */
const PAIRINGS: readonly (readonly [Gesture, readonly Contact[], boolean])[] = [
  [press, [BUTTON], true],
  [press, [RESET], true],
  [press, [BUTTON, UP], true],
  [press, [PADDLE], false],
  [press, [DIFFICULTY], false],
  [press, [BUTTON, PADDLE], false],
  [press, [DIFFICULTY, BUTTON], false],
  [turn, [PADDLE], true],
  [turn, [BUTTON], false],
  [turn, [TV], false],
  [turn, [PADDLE, BUTTON], false],
  [flip, [TV], true],
  [flip, [RESET], false],
  [flip, [BUTTON], false],
  [flip, [PADDLE], false],
  [flip, [TV, DIFFICULTY], false],
  [atA, [DIFFICULTY], true],
  [atA, [TV], false],
  [atA, [BUTTON], false],
  [atA, [DIFFICULTY, BUTTON], false],
  [toColor, [TV], true],
  [toColor, [DIFFICULTY], false],
  [toColor, [RESET], false],
];

describe('a gesture on a control', () => {
  it.each(
    PAIRINGS.map(([gesture, parts, fits]) => ({
      gesture,
      parts,
      fits,
      control: parts.map(({ id }) => id).join(' + '),
    })),
  )('$gesture.kind on $control: $fits', ({ gesture, parts, fits }) => {
    expect(fitsParts(gesture, parts)).toBe(fits);
  });

  it('asks for a position only where one is written', () => {
    expect([atA, toColor, flip, turn, press].map(positionOf)).toEqual(['A', 'COLOR', null, null, null]);
  });
});
