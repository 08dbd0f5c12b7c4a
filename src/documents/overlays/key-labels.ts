import { type Binding, isInForce } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Port } from '../../hardware/ports.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Action, Gesture } from '../../language/model.js';
import type { Phrases } from '../phrase-book.js';
import { bindingName } from '../wording/bindings.js';

export interface KeyLabel {
  readonly binding: Binding;
  /** Null for a fallback that steps a setting. */
  readonly action: Action | null;
  /** The action's `Short`, or its name; `+` before it where other keys are part of a chord. Not for a step. */
  readonly text: string;
  readonly isChord: boolean;
  /** Of a chord, what is not on the same keypad. */
  readonly partners: readonly Contact[];
  /** Null where a hand does it without being told. */
  readonly gesture: Gesture | null;
  /** The switch that only some of the consoles lack: on the others the key does not do this. */
  readonly without: SwitchName | null;
}

const QUICK_FIRST = ['press', 'tap', 'held', 'repeat', 'double tap', 'hold', 'release'];
/** A key is pressed anyhow: of these one needs no telling. */
const UNTOLD = new Set(['press', 'tap', 'held', 'repeat']);

/**
 * What stands on a key, the quicker gesture first.
 *
 * @param onKey the bindings that the key is a part of
 * @param consoles those that the key is labelled for
 */
export function keyLabelsOf(
  onKey: readonly Binding[],
  port: Port,
  consoles: readonly ConsoleProfile[],
): readonly KeyLabel[] {
  const own = onKey.toSorted(
    (a, b) => quickness(a) - quickness(b) || Number(isSubstitute(a)) - Number(isSubstitute(b)),
  );
  const labels = new Map<string, KeyLabel>();
  for (const binding of own) {
    const label = labelOf(binding, port, consoles);
    const key = `${label.text} ${label.action === null}`;
    if (!labels.has(key)) labels.set(key, label);
  }
  const [first, ...more] = labels.values();
  if (first === undefined) return [];
  const kind = first.binding.gesture.kind;
  return [untold(first, kind), ...more.map(label => untold(label, kind))];
}

const quickness = ({ gesture }: Binding): number => QUICK_FIRST.indexOf(gesture.kind);

const isSubstitute = ({ origin }: Binding): boolean => origin.kind === 'fallback';

function labelOf(binding: Binding, port: Port, consoles: readonly ConsoleProfile[]): KeyLabel {
  const { action, actionName, gesture, origin, parts } = binding;
  const isHere = (part: Contact) =>
    part.kind === 'control' && part.port === port && part.control.wiring.kind === 'matrix';
  const isChord = parts.filter(isHere).length > 1;
  const short = action?.short?.value ?? action?.name ?? actionName;
  const isPartial =
    origin.kind === 'fallback' && !consoles.every(profile => isInForce(origin.fallback, profile));
  return {
    binding,
    action,
    text: isChord ? `+${short}` : short,
    isChord,
    partners: parts.filter(part => !isHere(part)),
    gesture,
    without: isPartial ? origin.fallback.without : null,
  };
}

/** A gesture like that of the key's first label is not told, nor that of the first one. */
function untold(label: KeyLabel, first: Gesture['kind']): KeyLabel {
  const { kind } = label.binding.gesture;
  return UNTOLD.has(kind) && kind === first ? { ...label, gesture: null } : label;
}

/** What is printed, without signs. */
export function labelText({ binding, action, text }: KeyLabel, phrases: Phrases): string {
  return action === null ? bindingName(binding, phrases) : text;
}
