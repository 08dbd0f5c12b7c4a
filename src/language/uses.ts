import type { ControlWords } from './control-words.js';
import type { Action, BindingRow, Effect, Fallback, Gesture, Mode, NamedTime, Setting } from './model.js';
import type { Scope } from './scope.js';

/** The things that rows name: they can stay as they are while each of these is still the same object. */
export interface Uses {
  readonly actions: ReadonlySet<Action>;
  readonly settings: ReadonlySet<Setting>;
  readonly modes: ReadonlySet<Mode>;
  readonly times: ReadonlySet<NamedTime>;
  readonly controls: ControlWords;
}

interface UsesBeingFilled extends Uses {
  readonly actions: Set<Action>;
  readonly settings: Set<Setting>;
  readonly modes: Set<Mode>;
  readonly times: Set<NamedTime>;
}

const nothing = ({ controls }: Scope): UsesBeingFilled => ({
  actions: new Set(),
  settings: new Set(),
  modes: new Set(),
  times: new Set(),
  controls,
});

/** What the rows of a mode name. */
export function usesOf(rows: readonly BindingRow[], scope: Scope): Uses {
  const uses = nothing(scope);
  for (const { action, gesture, conditions, effects, insteadOf, alongWith } of rows) {
    uses.actions.add(action);
    for (const { value } of [...insteadOf, ...alongWith]) uses.actions.add(value);
    for (const { setting } of conditions) uses.settings.add(setting);
    for (const effect of effects) addEffect(effect, uses);
    if (gesture !== null) addTime(gesture.value, uses, scope);
  }
  return uses;
}

/** What the rows of `## Fallbacks` name. */
export function usesOfFallbacks(fallbacks: readonly Fallback[], scope: Scope): Uses {
  const uses = nothing(scope);
  for (const { subject, instead } of fallbacks) {
    if (subject.kind === 'action') uses.actions.add(subject.action);
    else uses.settings.add(subject.setting);
    if (instead.kind !== 'binding') continue;
    uses.modes.add(instead.mode);
    addTime(instead.gesture.value, uses, scope);
  }
  return uses;
}

function addEffect(effect: Effect, uses: UsesBeingFilled): void {
  if (effect.kind === 'go to') uses.modes.add(effect.mode);
  else uses.settings.add(effect.setting);
}

function addTime(gesture: Gesture, uses: UsesBeingFilled, { times }: Scope): void {
  const name = 'time' in gesture ? gesture.time.name : null;
  const time = name === null ? undefined : times.find(name);
  if (time !== undefined) uses.times.add(time);
}

/** Whether each of the names still names the same thing. */
export function areStill(uses: Uses, scope: Scope): boolean {
  return (
    uses.controls === scope.controls &&
    areFound(uses.actions, scope.actions.find) &&
    areFound(uses.settings, scope.settings.names.find) &&
    areFound(uses.modes, scope.modes.find) &&
    areFound(uses.times, scope.times.find)
  );
}

function areFound<T extends { readonly name: string }>(
  things: ReadonlySet<T>,
  find: (name: string) => T | undefined,
): boolean {
  for (const thing of things) if (find(thing.name) !== thing) return false;
  return true;
}
