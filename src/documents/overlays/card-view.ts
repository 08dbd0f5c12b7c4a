import { CONSOLES } from '../../hardware/consoles.js';
import type { Controller } from '../../hardware/controllers.js';
import type { Scheme } from '../../language/model.js';
import {
  type CallOut,
  type ControllerView,
  type ControlSpot,
  useText,
  viewControllers,
} from '../manual/controllers.js';
import type { Speech } from '../wording/gestures.js';
import { isSameSpot, modesOf, type Substitute, viewSubstitutes } from './card-substitutes.js';
import { distinctSigns, type Sign } from './signs.js';

/** What a controller's card says. */
export interface CardView {
  readonly controller: Controller;
  readonly caption: string;
  /** For those who can't see the card. */
  readonly text: string;
  readonly rows: readonly CardRow[];
  /** Of what only some of the consoles do. */
  readonly signs: readonly Sign[];
}

export interface CardRow {
  /** `Stick up` */
  readonly label: string;
  readonly words: string;
}

/** Each controller in use: what its controls do on every console, and what fallbacks make of them. */
export function viewCards(scheme: Scheme, speech: Speech): readonly CardView[] {
  // The first built-in console has every switch: on it no fallback is in force.
  const whole = { ...scheme, consoles: CONSOLES.slice(0, 1) };
  return viewControllers(whole, speech).map(view => viewCard(view, scheme, speech));
}

function viewCard(view: ControllerView, scheme: Scheme, speech: Speech): CardView {
  const { controller, caption, text } = view;
  const substitutes = viewSubstitutes(controller, scheme, speech);
  const told = substitutes.map(({ label, said, sign }) =>
    speech.phrases.say('call out', {
      control: label,
      uses: sign === null ? said : `${said}, ${sign.meaning}`,
    }),
  );
  return {
    controller,
    caption,
    text: [text, ...told].join(' '),
    rows: rowsOf(view, substitutes, scheme, speech),
    signs: distinctSigns(substitutes.flatMap(({ sign }) => sign ?? [])),
  };
}

/** In the order of the controls: a substitute stands beside what its control does, or in a row of its own. */
function rowsOf(
  { controller, calls }: ControllerView,
  substitutes: readonly Substitute[],
  scheme: Scheme,
  speech: Speech,
): readonly CardRow[] {
  const placeOf = (spot: ControlSpot | undefined) =>
    controller.controls.findIndex(({ name, seat }) => name === spot?.name && seat === spot.seat);
  const ofCalls = calls.map(call => ({
    spot: call.controls.length === 1 ? call.controls[0] : undefined,
    at: placeOf(call.controls[0]),
    label: call.label,
    seats: call.seats,
    words: usesOf(call, controller, substitutes, scheme, speech),
  }));
  const isBeside = (spot: ControlSpot) =>
    ofCalls.some(row => row.spot !== undefined && isSameSpot(row.spot, spot));
  const ofOwn = substitutes.filter(({ spot }, index) => {
    const first = substitutes.findIndex(other => isSameSpot(other.spot, spot));
    return first === index && !isBeside(spot);
  });
  const own = ofOwn.map(({ spot, label }) => ({
    spot,
    at: placeOf(spot),
    label,
    seats: '',
    words: [] as string[],
  }));
  return [...ofCalls, ...own]
    .toSorted((a, b) => a.at - b.at)
    .map(({ spot, label, seats, words }) => {
      const more = substitutes.filter(each => spot !== undefined && isSameSpot(each.spot, spot));
      const marked = more.map(({ said, sign }) => `${said}${sign?.mark ?? ''}`);
      const said = [...words, ...marked].join('; ');
      return { label, words: seats === '' ? said : `${said}. ${seats}` };
    });
}

/** With the mode where substitutes are in another one than all the rest. */
function usesOf(
  { uses }: CallOut,
  controller: Controller,
  substitutes: readonly Substitute[],
  scheme: Scheme,
  { phrases }: Speech,
): readonly string[] {
  const [mode] = modesOf(controller, scheme);
  const isTold = substitutes.some(({ hasMode }) => hasMode);
  return uses.map(use => {
    const placed = use.mode === '' && isTold ? { ...use, mode: mode?.name ?? '' } : use;
    return useText(placed, phrases.say, true);
  });
}
