import type { SettingSource } from '../../gestures/settings.js';
import { doHold } from '../../gestures/values.js';
import type { Position, TwoPositionSwitchName } from '../../hardware/switches.js';
import type { Condition, Setting } from '../../language/model.js';

/**
 * Values that the settings keep while a sequence is looked at. Worlds that make no difference are one.
 *
 * “During which the settings keep values under which both are live” is read as constant values, and each choice
 * of them is judged by itself: a pair that is clean in one and clashes in another is a conflict.
 */
export interface World {
  /** By holder: whether its `When` holds. */
  readonly holds: readonly boolean[];
  /** Of the watched switches, where their position gives a setting that matters. */
  readonly positions: ReadonlyMap<TwoPositionSwitchName, Position>;
  /** Values of the settings that matter; the others may have any. */
  readonly values: ReadonlyMap<Setting, string>;
}

export interface WorldQuery {
  /** Conditions that hold throughout. */
  readonly must: readonly Condition[];
  /** The `When` of each holder. */
  readonly holders: readonly (readonly Condition[])[];
  /** Switches whose positions are told apart. */
  readonly watched: readonly TwoPositionSwitchName[];
  /** What decides a setting on the console looked at. */
  readonly sourceOf: SourceOf;
}

export type SourceOf = (setting: Setting) => SettingSource;

const PLAIN: World = { holds: [], positions: new Map(), values: new Map() };

/** Every world that differs in a holder’s `When` or the watched switch’s position; empty where the conditions clash. */
export function worldsOf(query: WorldQuery): readonly World[] {
  const conditions = [...query.must, ...query.holders.flat()];
  if (conditions.length === 0) return [{ ...PLAIN, holds: query.holders.map(() => true) }];
  let worlds: readonly World[] = [{ ...PLAIN, holds: query.holders.map(() => true) }];
  for (const choices of variablesOf(conditions, query.sourceOf, new Set())) {
    const extended = worlds.flatMap(world => choices.flatMap(choice => extend(world, choice, query)));
    worlds = distinctWorlds(extended);
  }
  return worlds;
}

/** The first of each kind. */
function distinctWorlds(worlds: readonly World[]): readonly World[] {
  const byKey = new Map<string, World>();
  for (const world of worlds) {
    const key = `${world.holds}/${[...world.positions.values()]}`;
    if (!byKey.has(key)) byKey.set(key, world);
  }
  return [...byKey.values()];
}

/** One thing that can be chosen: values that some settings then have. */
interface Choice {
  readonly values: ReadonlyMap<Setting, string>;
  readonly switch: TwoPositionSwitchName | null;
  readonly position: Position | null;
}

/** The world with a choice added; none where a condition that must hold does not. */
function extend(world: World, choice: Choice, { must, holders, watched }: WorldQuery): readonly World[] {
  const holdsHere = (conditions: readonly Condition[]) =>
    doHold(
      conditions.filter(({ setting }) => choice.values.has(setting)),
      setting => choice.values.get(setting),
    );
  if (!holdsHere(must)) return [];
  const isTold = choice.switch !== null && choice.position !== null && watched.includes(choice.switch);
  return [
    {
      holds: world.holds.map((holds, index) => holds && holdsHere(holders[index] ?? [])),
      positions: isTold ? new Map([...world.positions, [choice.switch, choice.position]]) : world.positions,
      values: new Map([...world.values, ...choice.values]),
    },
  ];
}

/** One choice for every setting that some conditions name, with what the choice of a switch’s position is. */
export interface Assignment {
  readonly values: ReadonlyMap<Setting, string>;
  readonly positions: ReadonlyMap<TwoPositionSwitchName, Position>;
}

/**
 * Every way to set what some conditions name, values that no condition tells apart taken once.
 *
 * @param stepped settings of which every value is wanted, because they are stepped
 */
export function assignmentsOf(
  conditions: readonly Condition[],
  sourceOf: SourceOf,
  stepped: ReadonlySet<Setting>,
): readonly Assignment[] {
  let assignments: readonly Assignment[] = [{ values: new Map(), positions: new Map() }];
  for (const choices of variablesOf(conditions, sourceOf, stepped))
    assignments = assignments.flatMap(({ values, positions }) =>
      choices.map(choice => ({
        values: new Map([...values, ...choice.values]),
        positions:
          choice.switch === null || choice.position === null
            ? positions
            : new Map([...positions, [choice.switch, choice.position]]),
      })),
    );
  return assignments;
}

/** What can be chosen, variable by variable: a setting’s value, or a switch’s position and the settings it gives. */
function variablesOf(
  conditions: readonly Condition[],
  sourceOf: SourceOf,
  stepped: ReadonlySet<Setting>,
): readonly (readonly Choice[])[] {
  const bySwitch = new Map<TwoPositionSwitchName, Setting[]>();
  const variables: (readonly Choice[])[] = [];
  for (const setting of new Set(conditions.map(condition => condition.setting))) {
    const source = sourceOf(setting);
    if (source.kind === 'switch') bySwitch.set(source.name, [...(bySwitch.get(source.name) ?? []), setting]);
    else variables.push(valuesToTry(setting, source, stepped.has(setting) ? null : conditions));
  }
  for (const [name, owned] of bySwitch) variables.push(positionsToTry(name, owned, sourceOf));
  return variables;
}

/**
 * The values that conditions name, and one that none does: all others are alike. The first is the one it starts as.
 *
 * @param conditions null for every value
 */
function valuesToTry(
  setting: Setting,
  source: Exclude<SettingSource, { kind: 'switch' }>,
  conditions: readonly Condition[] | null,
): readonly Choice[] {
  const choice = (value: string): Choice => ({
    values: new Map([[setting, value]]),
    switch: null,
    position: null,
  });
  if (source.kind === 'constant') return [choice(source.value)];
  const ordered = [source.startsAs, ...setting.values.filter(value => value !== source.startsAs)];
  if (conditions === null) return ordered.map(choice);
  const named = new Set(
    conditions.filter(condition => condition.setting === setting).map(({ value }) => value),
  );
  const unnamed = ordered.find(value => !named.has(value));
  return ordered.filter(value => named.has(value) || value === unnamed).map(choice);
}

function positionsToTry(
  name: TwoPositionSwitchName,
  settings: readonly Setting[],
  sourceOf: SourceOf,
): readonly Choice[] {
  const tables = settings.flatMap(setting => {
    const source = sourceOf(setting);
    return source.kind === 'switch' ? [[setting, source.values] as const] : [];
  });
  const positions = new Set(tables.flatMap(([, values]) => [...values.keys()]));
  return [...positions].map(position => ({
    values: new Map(
      tables.flatMap(([setting, values]) => {
        const value = values.get(position);
        return value === undefined ? [] : [[setting, value] as const];
      }),
    ),
    switch: name,
    position,
  }));
}
