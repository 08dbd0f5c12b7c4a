import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import { positionOf } from '../../gestures/fit.js';
import { SWITCHES } from '../../hardware/switches.js';
import type { BankMap, Spot } from './banks.js';
import type { Channel, Happening, HoldBackPlan, Signal, SignalKind } from './parts.js';
import { serialSpot } from './serial.js';

/** The channels and happenings that bindings need, found one by one: each thing once, whoever asks for it. */
export interface Draft {
  readonly channels: readonly Channel[];
  readonly happenings: readonly Happening[];
  readonly visit: (binding: Binding) => void;
  readonly visitHolder: (binding: Binding) => void;
  readonly beginsOf: (holder: Binding) => HoldBackPlan['begins'];
  /** Null for gestures that count reads. */
  readonly signalOf: (binding: Binding) => Signal | null;
  /** The bit of a momentary control or chord. */
  readonly levelOf: (binding: Binding) => Spot;
  readonly isDirect: (binding: Binding) => boolean;
  readonly heldBy: (binding: Binding) => readonly number[];
}

export function createDraft(map: BankMap, heldBy: (binding: Binding) => readonly number[]): Draft {
  const channels: Channel[] = [];
  const happenings: Happening[] = [];
  const numbers = new Map<string, number>();
  const add = <T>(list: T[], item: T): number => {
    const key = JSON.stringify(item, (_, value: unknown) => (isContactLike(value) ? value.id : value));
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, list.length);
    list.push(item);
    return list.length - 1;
  };
  const isDirect = (binding: Binding) => binding.parts.length === 1 && heldBy(binding).length === 0;
  const channelOf = (binding: Binding): Channel => ({
    parts: binding.parts.map(map.spotOf),
    counted: binding.gesture.kind !== 'held',
    heldBy: heldBy(binding),
  });
  const levelOf = (binding: Binding): Spot => {
    const [part] = binding.parts;
    if (part !== undefined && isDirect(binding)) return map.spotOf(part);
    return serialSpot('D', add(channels, channelOf(binding)));
  };
  const happen = (happening: Happening): Signal => ({
    ...serialSpot('T', add(happenings, happening)),
    kind: 'on',
  });
  const positional = (binding: Binding, held: readonly number[]): Signal => {
    const [part] = binding.parts;
    if (part === undefined) throw new RangeError('a binding without a control');
    const source = sourceOf(binding, part, map);
    if (source.kind === 'signal' && held.length === 0) return source.signal;
    return happen({ source, heldBy: held });
  };
  const signalOf = (binding: Binding): Signal | null => {
    if (isPositional(binding)) return positional(binding, heldBy(binding));
    const kind = MOMENTARY_SIGNALS[binding.gesture.kind];
    return kind === undefined ? null : { ...levelOf(binding), kind };
  };
  return {
    channels,
    happenings,
    levelOf,
    signalOf,
    isDirect,
    heldBy,
    visit: binding => {
      if (signalOf(binding) === null) levelOf(binding);
    },
    visitHolder: binding => {
      if (isPositional(binding)) positional(binding, []);
    },
    beginsOf: holder =>
      isPositional(holder)
        ? { kind: 'signal', signal: positional(holder, []) }
        : { kind: 'engaged', parts: holder.parts.map(map.spotOf) },
  };
}

const isContactLike = (value: unknown): value is Contact =>
  typeof value === 'object' && value !== null && 'id' in value && 'kind' in value;

const MOMENTARY_SIGNALS: Readonly<Partial<Record<string, SignalKind>>> = {
  press: 'new',
  release: 'let go',
  held: 'on',
};

export function isPositional({ gesture: { kind } }: Binding): boolean {
  return kind === 'at' || kind === 'flip' || kind === 'flip to' || kind === 'turn';
}

function sourceOf({ gesture }: Binding, part: Contact, map: BankMap): Happening['source'] {
  if (gesture.kind === 'turn') {
    const isPaddle = part.kind === 'control' && part.control.wiring.kind === 'pot';
    return isPaddle
      ? { kind: 'paddle', contact: part }
      : { kind: 'wheel', spot: map.spotOf(part), contact: part };
  }
  const spot = map.spotOf(part);
  if (gesture.kind === 'flip') return { kind: 'signal', signal: { ...spot, kind: 'changed' } };
  const reads = readsAt(part, positionOf(gesture));
  const level: SignalKind = reads === 1 ? 'on' : 'off';
  const moved: SignalKind = reads === 1 ? 'new' : 'let go';
  return { kind: 'signal', signal: { ...spot, kind: gesture.kind === 'at' ? level : moved } };
}

function readsAt(part: Contact, position: string | null): 0 | 1 {
  if (part.kind !== 'switch') return 0;
  return SWITCHES[part.name].positions.find(({ name }) => name === position)?.reads ?? 0;
}
