import { describe, expect, it } from 'vitest';
import { type Contact, controlContact } from '../../src/gestures/contacts.js';
import { CONTROLLERS, type Control, type Controller } from '../../src/hardware/controllers.js';

const [joystick] = CONTROLLERS;
const stickUp = joystick?.controls[0];
if (joystick === undefined || stickUp === undefined) throw new Error('no joystick');

const controllerOf = (contact: Contact): Controller | null =>
  contact.kind === 'control' ? contact.controller : null;

describe('a contact', () => {
  it('is one object for one control of one controller in one port', () => {
    const contact = controlContact('left', joystick, stickUp);
    expect(controlContact('left', joystick, stickUp)).toBe(contact);
    expect(controlContact('right', joystick, stickUp)).not.toBe(contact);
  });

  it('knows its own controller, though another may share the control', () => {
    const twin: Controller = { ...joystick, name: 'twin stick' };
    expect(controllerOf(controlContact('left', joystick, stickUp))).toBe(joystick);
    expect(controllerOf(controlContact('left', twin, stickUp))).toBe(twin);
    expect(controllerOf(controlContact('left', joystick, stickUp))).toBe(joystick);
  });

  it('is named by its port, and by its seat where two players share the port', () => {
    const ids = CONTROLLERS.flatMap(controller =>
      controller.controls
        .filter(({ name }: Control) => ['button', 'paddle'].includes(name))
        .map(control => controlContact('right', controller, control).id),
    );
    expect(ids).toEqual(['right button', 'right A paddle', 'right B paddle', 'right button']);
  });
});
