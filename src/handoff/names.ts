import type { Contact } from '../gestures/contacts.js';
import type { ConsoleProfile } from '../hardware/consoles.js';
import type { RegisterSymbol } from '../hardware/registers.js';
import type { Action, Mode, Scheme, SeatsRow, Setting } from '../language/model.js';
import { symbolOf, symbolPart } from '../language/symbol.js';
import type { Unit } from './units.js';

/**
 * The symbols of a scheme. An action's is `LH_HARBOUR_STEER_LEFT`; all others begin with `LH__`, which no
 * action's can, or put `__` and a word behind an action's. No two are alike: where names would make the same
 * symbol (an accepted symbol-clash) the later one gets `__2`.
 */
export interface Names {
  /** `LH__`. */
  readonly prefix: string;
  readonly claim: (symbol: string) => string;
  readonly register: (symbol: RegisterSymbol) => string;
  readonly setting: (setting: Setting) => string;
  /** @param number place of the value in the setting's list */
  readonly value: (setting: Setting, number: number) => string;
  readonly mode: (mode: Mode) => string;
  readonly seats: (seats: SeatsRow) => string;
  readonly console: (profile: ConsoleProfile) => string;
  readonly action: (action: Action) => string;
  /** `LEFT_STICK_UP`: behind `LH__MASK_` and the like. */
  readonly contact: (contact: Pick<Contact, 'id'>) => string;
  /** `HARBOUR_DUET`: a mode and, where there are several, its seats row. */
  readonly unit: (unit: Pick<Unit, 'mode' | 'seats'>) => string;
}

export function createNames(scheme: Scheme): Names {
  const prefix = `${symbolOf(scheme.game.shortName.value)}__`;
  const claim = createClaim();
  const memo = createMemo(claim);
  const many = scheme.seats.length > 1;
  const tags = createMemo(createClaim());
  return {
    prefix,
    claim,
    register: symbol => `${prefix}${symbol}`,
    setting: setting => memo(setting, '', `${prefix}SETTING_${symbolPart(setting.name)}`),
    value: (setting, number) => {
      const text = setting.values[number];
      if (text === undefined) throw new RangeError(`${setting.name} has no value ${number}`);
      return memo(setting, String(number), `${prefix}VALUE_${symbolPart(setting.name)}_${symbolPart(text)}`);
    },
    mode: mode => memo(mode, '', `${prefix}MODE_${symbolPart(mode.name)}`),
    seats: seats => memo(seats, '', `${prefix}SEATS_${symbolPart(seats.name)}`),
    console: profile => memo(profile, '', `${prefix}CONSOLE_${symbolPart(profile.name)}`),
    action: action => memo(action, '', `${prefix}ACTION_${symbolPart(action.name)}`),
    contact: ({ id }) => symbolPart(id),
    unit: ({ mode, seats }) =>
      tags(mode, seats.name, many ? symbolOf(mode.name, seats.name) : symbolPart(mode.name)),
  };
}

function createClaim(): (symbol: string) => string {
  const taken = new Set<string>();
  return symbol => {
    let free = symbol;
    for (let count = 2; taken.has(free); count++) free = `${symbol}__${count}`;
    taken.add(free);
    return free;
  };
}

/** The same symbol for the same thing, claimed when it is first asked for. */
function createMemo(claim: (symbol: string) => string) {
  const known = new Map<object, Map<string, string>>();
  return (thing: object, detail: string, wish: string): string => {
    const own = known.get(thing) ?? new Map<string, string>();
    known.set(thing, own);
    const found = own.get(detail) ?? claim(wish);
    own.set(detail, found);
    return found;
  };
}
