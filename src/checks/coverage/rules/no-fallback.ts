import { type Binding, bindingsOfRow } from '../../../gestures/bindings.js';
import { fitsParts } from '../../../gestures/fit.js';
import type { ConsoleProfile, SwitchState } from '../../../hardware/consoles.js';
import { SWITCH_NAMES, type SwitchName } from '../../../hardware/switches.js';
import type { Action, BindingRow, Mode, Scheme, Setting } from '../../../language/model.js';
import { createMemory } from '../../../memory.js';
import type { Facts } from '../facts.js';
import { actionWay, valueWay } from '../free-controls.js';
import { type Hold, keyOf } from '../holds.js';
import type { Survey } from '../survey.js';

/** no-fallback: for settings, then for `must` actions. */
export function fallbackHolds(survey: Survey): readonly Hold[] {
  return survey.facts.flatMap(own => [...forSettings(own, survey), ...forActions(own, survey)]);
}

const isMissing = (state: SwitchState): boolean => state.kind === 'fixed' || state.kind === 'absent';

/** Whether a setting's switch is not there and nothing is said about that. */
export function lacksFallback(setting: Setting, profile: ConsoleProfile, scheme: Scheme): boolean {
  const { setBy } = setting;
  if (setBy.kind !== 'switch' || !isMissing(profile.switches[setBy.name])) return false;
  // A fallback for a setting is always for the switch that sets it.
  return !scheme.fallbacks.some(({ subject }) => subject.kind === 'setting' && subject.setting === setting);
}

function forSettings(own: Facts, survey: Survey): readonly Hold[] {
  const profile = own.offer.console;
  const lacking = survey.scheme.settings.filter(setting => lacksFallback(setting, profile, survey.scheme));
  return lacking.flatMap((setting, taken) => {
    const { setBy } = setting;
    if (setBy.kind !== 'switch') return [];
    return {
      rule: 'no-fallback',
      key: keyOf(setting.name, setBy.name),
      situations: own.offer.situations,
      spoils: {
        verdict: 'broken',
        mode: null,
        clause: `nothing is said about “${setting.name}” without the ${setBy.name} switch`,
      },
      tell: (report, where) =>
        report(
          'no-fallback',
          setBy.at,
          { subject: `“${setting.name}”`, switch: setBy.name, where: where.text },
          {
            settings: [setting.name],
            controls: [setBy.name],
            ...where.details,
            waysOut: valueWay({ setting, taken, console: profile, where, survey }),
          },
        ),
    } satisfies Hold;
  });
}

function forActions(own: Facts, survey: Survey): readonly Hold[] {
  const { console: profile, modes } = own.offer;
  const missing = SWITCH_NAMES.filter(name => isMissing(profile.switches[name]));
  if (missing.length === 0) return [];
  const { scheme, needs } = survey;
  return [...modes].flatMap(([mode, offered]) => {
    const { seats, console } = own.offer;
    const found = remembered([mode.rows, mode, offered, seats, console, scheme.fallbacks, needs], () =>
      needsIn(mode, missing, own, scheme),
    );
    return found.map(need => actionHold(own, survey, need));
  });
}

const remembered = createMemory<readonly Need[]>();

/** The `must` actions of a mode that need a missing switch about which nothing is said. */
function needsIn(mode: Mode, missing: readonly SwitchName[], own: Facts, scheme: Scheme): readonly Need[] {
  const rows = new Map<Action, BindingRow[]>();
  for (const row of mode.rows) {
    const known = rows.get(row.action);
    if (known !== undefined) known.push(row);
    else if (row.action.need === 'must') rows.set(row.action, [row]);
  }
  return [...rows].flatMap(([action, ofAction]) =>
    missing
      .filter(name => ofAction.some(row => mentions(row, name)) && !isAnswered(action, name, scheme))
      .flatMap(name => {
        const row = rowInNeed(action, name, mode, own, ofAction);
        return row === null ? [] : [{ action, name, mode, row }];
      }),
  );
}

const isAnswered = (action: Action, name: SwitchName, scheme: Scheme): boolean =>
  scheme.fallbacks.some(
    ({ subject, without }) => subject.kind === 'action' && subject.action === action && without === name,
  );

/** The first of the action's rows, where every binding of it in the mode needs the switch; else null. */
function rowInNeed(
  action: Action,
  name: SwitchName,
  mode: Mode,
  { offer }: Facts,
  rows: readonly BindingRow[],
): BindingRow | null {
  const profile = offer.console;
  if (rows.some(row => row.who.value.kind === 'game')) return null;
  const isOtherWay = (binding: Binding) => binding.action === action && !needs(binding, name, profile);
  const possible = offer.modes.get(mode)?.possible ?? [];
  if (possible.some(isOtherWay)) return null;
  const written = rows
    .flatMap(row => bindingsOfRow(row, offer.seats, withAllSwitches(profile)))
    .filter(({ gesture, parts }) => fitsParts(gesture, parts));
  // A way by another switch that is missing too is no need of this one: no switch is what all of them need.
  if (written.some(binding => isOtherWay(binding) && usesMissing(binding, profile))) return null;
  const first = written.find(binding => needs(binding, name, profile));
  return first?.origin.kind === 'row' ? first.origin.row : null;
}

const mentions = ({ alternatives }: BindingRow, name: SwitchName): boolean =>
  alternatives.some(({ parts }) => parts.some(part => part.kind === 'switch' && part.name === name));

const usesMissing = ({ parts }: Binding, profile: ConsoleProfile): boolean =>
  parts.some(part => part.kind === 'switch' && isMissing(profile.switches[part.name]));

const FRONT: SwitchState = { kind: 'front' };

/** The console as it would be with every switch there: then each row has the bindings that it is written for. */
const withAllSwitches = (profile: ConsoleProfile): ConsoleProfile => ({
  ...profile,
  switches: {
    'TV type': FRONT,
    'left difficulty': FRONT,
    'right difficulty': FRONT,
    SELECT: FRONT,
    RESET: FRONT,
  },
});

function needs({ parts, gesture }: Binding, name: SwitchName, profile: ConsoleProfile): boolean {
  const state = profile.switches[name];
  if (state.kind === 'fixed' && gesture.kind === 'at' && gesture.position === state.position) return false;
  return parts.some(part => part.kind === 'switch' && part.name === name);
}

interface Need {
  readonly action: Action;
  readonly name: SwitchName;
  readonly mode: Mode;
  readonly row: BindingRow;
}

function actionHold(own: Facts, survey: Survey, { action, name, mode, row }: Need): Hold {
  return {
    rule: 'no-fallback',
    key: keyOf(mode.name, action.name, name),
    situations: own.offer.situations,
    spoils: {
      verdict: 'broken',
      mode,
      clause: `nothing is said about “${action.name}” without the ${name} switch`,
    },
    tell: (report, where) =>
      report(
        'no-fallback',
        row.at,
        { subject: `“${action.name}” in “${mode.name}”`, switch: name, where: where.text },
        {
          mode: mode.name,
          actions: [action.name],
          controls: [name],
          ...where.details,
          waysOut: [
            ...actionWay({ mode, action, doer: 'anyone', console: own.offer.console, where, survey }),
            `If the game plays well without it, make the \`Need\` of “${action.name}” \`nice\`.`,
          ],
        },
      ),
  };
}
