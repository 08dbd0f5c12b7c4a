import { isInForce } from '../../../gestures/bindings.js';
import type { Action, Mode, Scheme, SeatsRow, Setting } from '../../../language/model.js';
import type { Doer } from '../doings.js';
import type { Facts } from '../facts.js';
import { actionWay, valueWay } from '../free-controls.js';
import { type Hold, keyOf } from '../holds.js';
import { type Doers, doersOf, isThereFor, type ModeDoers } from '../possible-actions.js';
import { acrossConsoles, type Company, type Survey } from '../survey.js';
import { lacksFallback } from './no-fallback.js';

/** lost-action, lost-value. */
export function lossHolds(survey: Survey): readonly Hold[] {
  const byRows = new Map(survey.facts.map(facts => [facts, doersOf(facts, 'rows')]));
  const withFallbacks = new Map(survey.facts.map(facts => [facts, doersOf(facts, 'rows and fallbacks')]));
  const companies = acrossConsoles(survey);
  return [
    ...companies.flatMap(company => lostActions(company, byRows, withFallbacks, survey)),
    ...companies.flatMap(company => lostValues(company, survey)),
  ];
}

function lostActions(
  { own, situations, peers }: Company,
  byRows: ReadonlyMap<Facts, Doers>,
  withFallbacks: ReadonlyMap<Facts, Doers>,
  survey: Survey,
): readonly Hold[] {
  const holds = new Map<string, Hold>();
  for (const mode of own.recipes.keys()) {
    const here = withFallbacks.get(own)?.get(mode);
    for (const there of new Set(peers.map(peer => byRows.get(peer)?.get(mode)))) {
      if (there === undefined || there === here) continue;
      for (const { action, doer } of missingIn(here, there, own)) {
        const key = keyOf(mode.name, action.name, doer);
        holds.set(key, lostAction({ mode, action, doer, own, survey, key, situations }));
      }
    }
  }
  return [...holds.values()];
}

/** Who can do what elsewhere, and not here. */
function missingIn(here: ModeDoers | undefined, there: ModeDoers, { offer }: Facts) {
  return [...there].flatMap(([action, doers]) =>
    [...doers].flatMap(doer =>
      losersOf(doer, here?.get(action), offer.seats).map(loser => ({ action, doer: loser })),
    ),
  );
}

/** Who of those that are meant can't do an action; where some of the players still can, the others one by one. */
function losersOf(doer: Doer, doers: ReadonlySet<Doer> | undefined, seats: SeatsRow): readonly Doer[] {
  if (doer === 'game' || isThereFor(doer, doers, seats)) return [];
  const left = seats.players.map(({ name }) => name).filter(name => doers?.has(name) !== true);
  return doer === 'anyone' && left.length < seats.players.length ? left : [doer];
}

interface LostAction extends Pick<Hold, 'key' | 'situations'> {
  readonly mode: Mode;
  readonly action: Action;
  readonly doer: Doer;
  readonly own: Facts;
  readonly survey: Survey;
}

function lostAction({ mode, action, doer, own, survey, key, situations }: LostAction): Hold {
  const row = mode.rows.find(each => each.action === action && each.gesture !== null);
  const isMust = action.need === 'must';
  return {
    rule: 'lost-action',
    key,
    situations,
    spoils: {
      verdict: isMust ? 'broken' : 'altered',
      mode,
      clause: `“${action.name}” is lost for ${whoText(doer)}`,
    },
    lost: { kind: 'action', name: action.name },
    tell: (report, where) =>
      report(
        'lost-action',
        row?.at ?? mode.at,
        { action: action.name, who: whoText(doer), mode: mode.name, where: where.text },
        {
          severity: isMust ? 'error' : 'warning',
          mode: mode.name,
          players: [doer],
          actions: [action.name],
          ...where.details,
          waysOut: [
            ...actionWay({ mode, action, doer, console: own.offer.console, where, survey }),
            ...(isMust
              ? [`If the game plays well without it, make the \`Need\` of “${action.name}” \`nice\`.`]
              : []),
          ],
        },
      ),
  };
}

export const whoText = (doer: Doer): string => (doer === 'anyone' ? 'everyone' : `the ${doer} player`);

function lostValues({ own, situations, peers }: Company, survey: Survey): readonly Hold[] {
  return survey.scheme.settings.flatMap(setting => {
    if (lacksFallback(setting, own.offer.console, survey.scheme)) return [];
    if (staysDeclared(setting, own, survey.scheme)) return [];
    const lost = setting.values.filter(
      value =>
        own.values.get(setting)?.has(value) !== true &&
        peers.some(peer => peer.values.get(setting)?.has(value)),
    );
    return lost.map(value => lostValue(setting, value, own, situations, survey));
  });
}

function lostValue(
  setting: Setting,
  value: string,
  own: Facts,
  situations: Hold['situations'],
  survey: Survey,
): Hold {
  return {
    rule: 'lost-value',
    key: keyOf(setting.name, value),
    situations,
    spoils: { verdict: 'altered', mode: null, clause: `“${setting.name}” can’t become “${value}”` },
    lost: { kind: 'value', setting, value },
    tell: (report, where) =>
      report(
        'lost-value',
        setting.at,
        { setting: setting.name, value, where: where.text },
        {
          settings: [setting.name],
          values: [value],
          ...where.details,
          waysOut: valueWay({ setting, taken: 0, console: own.offer.console, where, survey }),
        },
      ),
  };
}

const staysDeclared = (setting: Setting, { offer }: Facts, scheme: Scheme): boolean =>
  scheme.fallbacks.some(
    row =>
      row.instead.kind === 'stays' &&
      row.subject.kind === 'setting' &&
      row.subject.setting === setting &&
      isInForce(row, offer.console),
  );
