import type { Binding } from '../../gestures/bindings.js';
import { type Contact, switchContact } from '../../gestures/contacts.js';
import { settingSource } from '../../gestures/settings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { SWITCHES, type TwoPositionSwitchName } from '../../hardware/switches.js';
import type { Condition, Scheme, Setting } from '../../language/model.js';
import { numberOfValue } from '../units.js';

/** A `When` on one class of consoles: what is left to test when the routine runs. */
export type Guarded =
  | { readonly kind: 'always' }
  | { readonly kind: 'never' }
  | { readonly kind: 'tests'; readonly tests: readonly GuardTest[]; readonly key: string };

export type GuardTest =
  /** A setting the game keeps in RAM, as the number of its value. */
  | { readonly kind: 'setting'; readonly setting: Setting; readonly value: number; readonly is: boolean }
  /** A switch, by what its bit read at the read before. */
  | {
      readonly kind: 'switch';
      readonly name: TwoPositionSwitchName;
      readonly mask: number;
      readonly reads: 0 | 1;
    };

export interface Guards {
  readonly of: (conditions: readonly Condition[]) => Guarded;
  /** The switches that some bindings' conditions ask for. */
  readonly switchesOf: (bindings: readonly Binding[]) => readonly Contact[];
  /** Their bits of SWCHB. */
  readonly switchMask: (bindings: readonly Binding[]) => number;
}

export function createGuards(scheme: Scheme, profile: ConsoleProfile): Guards {
  const of = (conditions: readonly Condition[]) => guardOf(conditions, scheme, profile);
  const switchTests = (bindings: readonly Binding[]) =>
    bindings.flatMap(({ conditions }) => {
      const guard = of(conditions);
      return guard.kind === 'tests' ? guard.tests.filter(test => test.kind === 'switch') : [];
    });
  return {
    of,
    switchesOf: bindings => switchTests(bindings).map(({ name }) => switchContact(name)),
    switchMask: bindings => switchTests(bindings).reduce((mask, test) => mask | test.mask, 0),
  };
}

function guardOf(conditions: readonly Condition[], scheme: Scheme, profile: ConsoleProfile): Guarded {
  const tests: GuardTest[] = [];
  for (const condition of conditions) {
    const found = testOf(condition, scheme, profile);
    if (found === false) return { kind: 'never' };
    if (found !== true) tests.push(found);
  }
  if (tests.length === 0) return { kind: 'always' };
  const texts = tests.map(test =>
    test.kind === 'setting'
      ? `${test.setting.name}${test.is ? '=' : '!'}${test.value}`
      : `${test.name}/${test.reads}`,
  );
  return { kind: 'tests', tests, key: [...new Set(texts)].sort().join('&') };
}

/** True or false where the console decides it once and for all. */
function testOf(
  { setting, is, value }: Condition,
  scheme: Scheme,
  profile: ConsoleProfile,
): GuardTest | boolean {
  const source = settingSource(setting, scheme, profile);
  if (source.kind === 'constant') return (source.value === value) === is;
  if (source.kind === 'game') {
    if (setting.values.length === 1) return is;
    return { kind: 'setting', setting, value: numberOfValue(setting, value), is };
  }
  const holds = SWITCHES[source.name].positions.filter(
    ({ name }) => (source.values.get(name) === value) === is,
  );
  const [only] = holds;
  if (only === undefined || holds.length === 2) return holds.length === 2;
  return { kind: 'switch', name: source.name, mask: 1 << SWITCHES[source.name].bit, reads: only.reads };
}
