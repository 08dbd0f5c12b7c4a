import type { Condition, Effect } from './model.js';

/** One part of a `When`: `Chart is not 3`. */
export function conditionText({ setting, is, value }: Condition): string {
  return `${setting.name} is ${is ? '' : 'not '}${value}`;
}

/** One part of a `Then`: `go to Quay`, `Chart: next`. */
export function effectText(effect: Effect): string {
  switch (effect.kind) {
    case 'go to':
      return `go to ${effect.mode.name}`;
    case 'set':
      return `${effect.setting.name}: ${effect.value}`;
    case 'step':
      return `${effect.setting.name}: ${effect.by === 1 ? 'next' : 'previous'}`;
    default:
      return effect satisfies never;
  }
}
