import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type {
  Action,
  BindingRow,
  Condition,
  Effect,
  Fallback,
  Gesture,
  Mode,
  PlayerName,
} from '../../language/model.js';
import type { RecipeStep } from '../coverage-model.js';

/** Who does an action in a mode. `game`: the game does it by itself. */
export type Doer = PlayerName | 'anyone' | 'game';

/** The bindings of a row (or of a fallback for it) that do the same to the state: one, whoever does it and how. */
export interface Doing {
  /** Null for a fallback that steps a setting. */
  readonly row: BindingRow | null;
  /** Null for what is done as the row says. */
  readonly fallback: Fallback | null;
  /** Null for a fallback that steps a setting. */
  readonly action: Action | null;
  readonly doers: ReadonlySet<Doer>;
  /** Null for `game` rows. */
  readonly gesture: Gesture | null;
  /** The switch that is pressed, moved or looked at. */
  readonly worked: Extract<Contact, { kind: 'switch' }> | null;
  readonly conditions: readonly Condition[];
  readonly effects: readonly Effect[];
  /** How a recipe tells it: its first binding. */
  readonly step: RecipeStep;
}

/** What can be done in a mode, in the order of the rows; fallbacks last. */
export function doingsOf(mode: Mode, bindings: readonly Binding[]): readonly Doing[] {
  const doings = new Map<string, Doing & { readonly doers: Set<Doer>; readonly order: number }>();
  for (const binding of bindings) {
    const { origin, order, parts, player } = binding;
    const worked = parts.find(part => part.kind === 'switch') ?? null;
    const key = `${order} ${origin.row?.index ?? ''} ${worked?.id ?? ''}`;
    const known = doings.get(key);
    if (known !== undefined) {
      known.doers.add(player);
      continue;
    }
    doings.set(key, {
      row: origin.row,
      fallback: origin.kind === 'fallback' ? origin.fallback : null,
      action: binding.action,
      doers: new Set([player]),
      gesture: binding.gesture,
      worked,
      conditions: binding.conditions,
      effects: binding.effects,
      step: { kind: 'binding', mode, binding },
      order,
    });
  }
  const own = [...doings.values(), ...mode.rows.flatMap(row => gameDoing(mode, row))];
  return own.sort((a, b) => a.order - b.order);
}

function gameDoing(mode: Mode, row: BindingRow): (Doing & { doers: Set<Doer>; order: number })[] {
  if (row.who.value.kind !== 'game') return [];
  const { action, conditions, effects, index } = row;
  const step: RecipeStep = { kind: 'game', mode, row };
  return [
    {
      row,
      fallback: null,
      action,
      doers: new Set(['game'] as const),
      gesture: null,
      worked: null,
      conditions,
      effects,
      step,
      order: index,
    },
  ];
}
