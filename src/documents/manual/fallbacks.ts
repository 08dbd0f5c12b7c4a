import { isInForce, needsSwitch } from '../../gestures/bindings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { BindingRow, Fallback, Scheme } from '../../language/model.js';
import { alternativeSentences, type Speech } from '../wording/gestures.js';
import { switchObject } from '../wording/machine.js';

/** “If your console has no …”: what to do there. */
export interface FallbackBox {
  readonly title: string;
  readonly lines: readonly string[];
}

/** One box for each set of used switches that some console of the scheme lacks. */
export function viewFallbacks(
  scheme: Scheme,
  speech: Speech,
  used: readonly SwitchName[],
): readonly FallbackBox[] {
  const boxes = new Map<string, FallbackBox>();
  for (const profile of scheme.consoles) {
    const missing = used.filter(name => isMissing(name, profile));
    const key = missing.join();
    if (missing.length > 0 && !boxes.has(key)) boxes.set(key, viewBox(missing, profile, scheme, speech));
  }
  return [...boxes.values()];
}

function isMissing(name: SwitchName, profile: ConsoleProfile): boolean {
  const { kind } = profile.switches[name];
  return kind === 'fixed' || kind === 'absent';
}

function viewBox(
  missing: readonly SwitchName[],
  profile: ConsoleProfile,
  scheme: Scheme,
  speech: Speech,
): FallbackBox {
  const { phrases } = speech;
  const onlyDifficulty = missing.every(name => name.endsWith('difficulty'));
  const isPair = profileLacksBoth(profile);
  const title =
    onlyDifficulty && isPair
      ? phrases.say('without difficulty switches')
      : phrases.say('without switches', {
          switches: phrases.and(missing.map(name => switchObject(name, phrases))),
        });
  const lines = scheme.fallbacks
    .filter(fallback => isInForce(fallback, profile))
    .flatMap(fallback => fallbackLine(fallback, profile, speech) ?? []);
  const silent = scheme.settings.flatMap(({ name, setBy, startsAs }) => {
    if (setBy.kind !== 'switch' || !missing.includes(setBy.name)) return [];
    if (scheme.fallbacks.some(({ subject }) => subject.kind === 'setting' && subject.setting.name === name))
      return [];
    const state = profile.switches[setBy.name];
    const value = state.kind === 'fixed' ? (setBy.values.get(state.position) ?? startsAs) : startsAs;
    return [phrases.say('fallback stays', { setting: name, value })];
  });
  const lost = lostActions(missing, profile, scheme);
  const quoted = lost.map(text => phrases.say('quoted', { text }));
  const all = [
    ...lines,
    ...silent,
    ...(lost.length === 0 ? [] : [phrases.say('fallback lost', { actions: phrases.and(quoted) })]),
  ];
  return { title, lines: all.length === 0 ? [phrases.say('fallback nothing')] : all };
}

const profileLacksBoth = (profile: ConsoleProfile): boolean =>
  isMissing('left difficulty', profile) && isMissing('right difficulty', profile);

/** Actions that some mode has only on a switch that is not there, and that no fallback stands in for. */
function lostActions(
  missing: readonly SwitchName[],
  profile: ConsoleProfile,
  { modes, fallbacks }: Scheme,
): readonly string[] {
  const isLost = (row: BindingRow) =>
    missing.some(
      name =>
        needsSwitch(row, name, profile) &&
        !fallbacks.some(
          ({ without, subject }) =>
            without === name && subject.kind === 'action' && subject.action === row.action,
        ),
    );
  const lost = modes.flatMap(({ rows }) =>
    rows.filter(row => rows.every(other => other.action !== row.action || isLost(other))),
  );
  return [...new Set(lost.map(({ action }) => action.name))];
}

/** Null where a fallback changes nothing: no row of the action needs the switch. */
function fallbackLine(fallback: Fallback, profile: ConsoleProfile, speech: Speech): string | null {
  const { phrases } = speech;
  const { instead, subject } = fallback;
  if (instead.kind === 'stays') {
    const setting = subject.kind === 'setting' ? subject.setting.name : subject.action.name;
    return phrases.say('fallback stays', { setting, value: instead.value });
  }
  const how = phrases.or(alternativeSentences(instead.alternatives, instead.gesture.value, speech));
  const mode = instead.mode.name;
  if (subject.kind === 'action') {
    const { action } = subject;
    const isNeeded = instead.mode.rows.some(
      row => row.action === action && needsSwitch(row, fallback.without, profile),
    );
    return isNeeded ? phrases.say('fallback action', { Action: action.name, mode, how }) : null;
  }
  const { setting } = subject;
  const state = profile.switches[fallback.without];
  const fixed =
    state.kind === 'fixed' && setting.setBy.kind === 'switch'
      ? setting.setBy.values.get(state.position)
      : undefined;
  return phrases.say('fallback steps', {
    setting: setting.name,
    value: fixed ?? setting.startsAs,
    mode,
    how,
  });
}
