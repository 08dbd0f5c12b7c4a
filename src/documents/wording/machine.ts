import type { Controller } from '../../hardware/controllers.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Phrases } from '../phrase-book.js';
import { controlLabel, controlObject } from './controls.js';

const BUILT_IN_CONSOLES = ['six-switch', 'four-switch', 'no-difficulty'] as const;
const BUILT_IN_CONTROLLERS = ['joystick', 'paddles', 'keypad', 'wheel'] as const;

/** `six switches on the front`; an own console by its name. */
export function consoleWords(name: string, phrases: Phrases): string {
  const builtIn = BUILT_IN_CONSOLES.find(each => each === name);
  return builtIn === undefined ? phrases.say('quoted', { text: name }) : phrases.say(`console ${builtIn}`);
}

/** The head of a drawing of its panel. */
export function panelWords(name: string, phrases: Phrases): string {
  const builtIn = BUILT_IN_CONSOLES.find(each => each === name);
  return builtIn === undefined ? phrases.say('panel own', { name }) : phrases.say(`panel ${builtIn}`);
}

/** `joystick`; an own controller by its name; `nothing` for an empty port. */
export function controllerWords(controller: Controller | null, phrases: Phrases): string {
  if (controller === null) return phrases.say('port empty');
  const builtIn = BUILT_IN_CONTROLLERS.find(each => each === controller.name);
  return builtIn === undefined || controller.own ? controller.name : phrases.say(`controller ${builtIn}`);
}

export function switchWords(name: SwitchName, phrases: Phrases): string {
  return controlLabel({ kind: 'switch', name }, phrases);
}

/** `the left difficulty switch`: within a sentence. */
export function switchObject(name: SwitchName, phrases: Phrases): string {
  return controlObject({ kind: 'switch', name }, phrases);
}
