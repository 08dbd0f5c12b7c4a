import { type Contact, contactType } from '../gestures/contacts.js';

/** What is pressed, by whom and since when. */
export interface Presses {
  press(contact: Contact, source: string, now: number): void;
  release(contact: Contact, source: string, now: number): void;
  letGo(now: number, source?: string): void;
  /** What counts as down now, the earliest press first; of opposites only the one pressed last. */
  down(now: number): readonly Contact[];
  /** These have been read as engaged: what is let go by now is over. */
  settle(engaged: readonly Contact[]): void;
  /** These must wait for a later read: they stay down until one has seen them. */
  keep(waiting: readonly Contact[]): void;
}

interface Press {
  readonly source: string;
  readonly since: number;
  /** When it was let go, ms; null while it lasts. */
  readonly until: number | null;
  /** Stays down until it has been read. */
  readonly isOwed: boolean;
}

/** A press that is shorter than this counts as this long, ms: pointing devices make clicks that no finger can. */
const SHORTEST_PRESS = 50;

/** @param hasLatch a button that was down at any time since the read before counts */
export function createPresses(hasLatch: boolean): Presses {
  const presses = new Map<Contact, readonly Press[]>();
  const change = (contact: Contact, changed: (press: Press) => Press) =>
    presses.set(contact, (presses.get(contact) ?? []).map(changed));
  const end = (contact: Contact, now: number, source?: string) =>
    change(contact, press => {
      const isIts = press.until === null && (source === undefined || press.source === source);
      return isIts ? { ...press, until: now } : press;
    });
  return {
    press(contact, source, now) {
      const own = presses.get(contact) ?? [];
      if (own.some(press => press.until === null && press.source === source)) return;
      const isOwed = hasLatch && isLatched(contact);
      presses.set(contact, [...own, { source, since: now, until: null, isOwed }]);
    },
    release: (contact, source, now) => void end(contact, now, source),
    letGo(now, source) {
      for (const contact of presses.keys()) end(contact, now, source);
    },
    down(now) {
      for (const [contact, own] of presses) {
        const lasting = own.filter(press => press.isOwed || isLasting(press, now));
        if (lasting.length === 0) presses.delete(contact);
        else presses.set(contact, lasting);
      }
      return withoutOpposites(presses);
    },
    settle(engaged) {
      for (const contact of engaged) change(contact, press => ({ ...press, isOwed: false }));
    },
    keep(waiting) {
      for (const contact of waiting) change(contact, press => ({ ...press, isOwed: true }));
    },
  };
}

const isLatched = (contact: Contact): boolean =>
  contact.kind === 'control' &&
  contact.control.wiring.kind === 'contact' &&
  contact.control.wiring.line === 'button';

const isLasting = ({ since, until }: Press, now: number): boolean =>
  until === null || now < Math.max(until, since + SHORTEST_PRESS);

function withoutOpposites(presses: ReadonlyMap<Contact, readonly Press[]>): readonly Contact[] {
  const pressed = [...presses]
    .map(([contact, own]) => ({ contact, since: Math.min(...own.map(press => press.since)) }))
    .toSorted((a, b) => a.since - b.since);
  return pressed.flatMap(({ contact }, index) =>
    pressed.slice(index + 1).some(later => areOpposite(contact, later.contact)) ? [] : [contact],
  );
}

function areOpposite(one: Contact, other: Contact): boolean {
  if (one.kind !== 'control' || other.kind !== 'control' || one.port !== other.port) return false;
  const names = [one.control.name, other.control.name];
  return one.controller.opposites.some(pair => pair.every(name => names.includes(name)));
}

export const isMomentary = (contact: Contact): boolean => contactType(contact) === 'momentary';
