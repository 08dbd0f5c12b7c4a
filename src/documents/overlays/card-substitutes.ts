import { alikeConsoles } from '../../checks/coverage/situations.js';
import { type Binding, bindingsOf, isInForce } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import { CONSOLES, type ConsoleProfile } from '../../hardware/consoles.js';
import type { Controller } from '../../hardware/controllers.js';
import { PORTS } from '../../hardware/ports.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Mode, Scheme } from '../../language/model.js';
import { type ControlSpot, useText } from '../manual/controllers.js';
import { bindingName, togetherWith } from '../wording/bindings.js';
import { controlLabel } from '../wording/controls.js';
import { isPlainGesture, type Speech, shortGesture } from '../wording/gestures.js';
import { playerWords } from '../wording/who.js';
import { fallbackSign } from './key-words.js';
import { fallbackMarks, type Sign } from './signs.js';

/** What a fallback makes of a control. */
export interface Substitute {
  readonly spot: ControlSpot;
  /** `Stick up` */
  readonly label: string;
  /** `Hut: Bees: next value (left player)`. */
  readonly said: string;
  /** Whether it says the mode. */
  readonly hasMode: boolean;
  /** Null where every console of the scheme has it. */
  readonly sign: Sign | null;
}

/** A binding with the control of it that is on the controller. */
interface Use {
  readonly mode: Mode;
  readonly binding: Binding;
  readonly part: OnController;
  readonly spot: ControlSpot;
}

type OnController = Extract<Contact, { kind: 'control' }>;

export const isSameSpot = (a: ControlSpot, b: ControlSpot): boolean => a.name === b.name && a.seat === b.seat;

/** The modes in which a controller does something by the rows of the scheme. */
export const modesOf = (controller: Controller, scheme: Scheme): readonly Mode[] => [
  ...new Set(rowUses(controller, scheme).map(({ mode }) => mode)),
];

const rowUses = (controller: Controller, scheme: Scheme): readonly Use[] =>
  usesOn(controller, scheme, CONSOLES.slice(0, 1));

/** In the order of the modes; each use once, for all the players who have it. */
export function viewSubstitutes(
  controller: Controller,
  scheme: Scheme,
  speech: Speech,
): readonly Substitute[] {
  const consoles = alikeConsoles(scheme).flatMap(([first]) => first ?? []);
  const uses = usesOn(controller, scheme, consoles).filter(({ binding }) => withoutOf(binding) !== null);
  const keys = new Set(uses.map(use => keyOf(use, speech)));
  const rows = rowUses(controller, scheme);
  const hasMode = new Set([...rows, ...uses].map(({ mode }) => mode)).size > 1;
  const marks = fallbackMarks(scheme);
  return [...keys].flatMap(key => {
    const alike = uses.filter(use => keyOf(use, speech) === key);
    const [use] = alike;
    if (use === undefined) return [];
    const isAlone = ![...rows, ...uses].some(
      other => other.mode === use.mode && isSameSpot(other.spot, use.spot) && !alike.includes(other),
    );
    const without = partialWithout(use.binding, scheme);
    return [
      {
        spot: use.spot,
        label: controlLabel(
          { kind: 'control', name: use.spot.name, port: null, letter: use.spot.seat },
          speech.phrases,
        ),
        said: sayUse(alike, use, { hasMode, isAlone }, scheme, speech),
        hasMode,
        sign: without === null ? null : fallbackSign(without, marks, speech),
      },
    ];
  });
}

function usesOn(controller: Controller, scheme: Scheme, consoles: readonly ConsoleProfile[]): readonly Use[] {
  return consoles.flatMap(profile =>
    scheme.modes.flatMap(mode =>
      mode.seats.flatMap(seats =>
        bindingsOf(scheme, mode, seats, profile).flatMap(binding =>
          binding.parts.flatMap((part): Use[] =>
            part.kind === 'control' && part.controller === controller
              ? [{ mode, binding, part, spot: { name: part.control.name, seat: part.control.seat } }]
              : [],
          ),
        ),
      ),
    ),
  );
}

const withoutOf = ({ origin }: Binding): SwitchName | null =>
  origin.kind === 'fallback' ? origin.fallback.without : null;

/** The switch that a fallback does without, where some console has it. */
function partialWithout({ origin }: Binding, { consoles }: Scheme): SwitchName | null {
  if (origin.kind !== 'fallback' || consoles.every(profile => isInForce(origin.fallback, profile)))
    return null;
  return origin.fallback.without;
}

const keyOf = (use: Use, speech: Speech): string =>
  JSON.stringify([use.spot, use.mode.name, bindingName(use.binding, speech.phrases), howOf(use, speech)]);

/** `hold 1 s, with Button`. */
const howOf = ({ binding, part }: Use, speech: Speech): string => {
  const partners = binding.parts.filter(other => other !== part);
  return [shortGesture(binding.gesture, speech), togetherWith(partners, speech.phrases)]
    .filter(Boolean)
    .join(', ');
};

function sayUse(
  alike: readonly Use[],
  use: Use,
  { hasMode, isAlone }: { readonly hasMode: boolean; readonly isAlone: boolean },
  scheme: Scheme,
  speech: Speech,
): string {
  const { mode, binding } = use;
  const isPlain = isAlone && binding.parts.length === 1 && isPlainGesture(binding.gesture);
  const notes = [isPlain ? '' : howOf(use, speech), playerNote(alike, scheme, speech)];
  const name = bindingName(binding, speech.phrases);
  const note = notes.filter(Boolean).join(', ');
  return useText({ mode: hasMode ? mode.name : '', words: name, name, note }, speech.phrases.say, true);
}

/** The players, where not all who ever hold the control can do it. */
function playerNote(alike: readonly Use[], { seats }: Scheme, { phrases }: Speech): string {
  const players = seats.flatMap(row => row.players);
  const holding = (parts: readonly OnController[]) =>
    players.filter(({ port, letter, controller }) =>
      parts.some(
        part =>
          part.port === port &&
          part.controller === controller &&
          (part.control.seat === '' || part.control.seat === letter),
      ),
    );
  const able = new Set(holding(alike.map(({ part }) => part)).map(({ name }) => name));
  const anywhere = alike.flatMap(({ part }) => PORTS.map(port => ({ ...part, port })));
  if (holding(anywhere).every(({ name }) => able.has(name))) return '';
  return phrases.and([...able].map(name => playerWords(name, phrases)));
}
