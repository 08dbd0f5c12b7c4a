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

/** Every world that differs in a holder’s `When` or the watched switch’s position; empty where the conditions clash. */
export function worldsOf(query: WorldQuery): readonly World[] {
  const conditions = [...query.must, ...query.holders.flat()];
  const plain: World = { holds: query.holders.map(() => true), positions: new Map(), values: new Map() };
  let worlds: readonly World[] = [plain];
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

/** The world with a choice added; none where a condition that must hold does not. */
function extend(world: World, choice: Assignment, { must, holders, watched }: WorldQuery): readonly World[] {
  const holdsHere = (conditions: readonly Condition[]) =>
    doHold(
      conditions.filter(({ setting }) => choice.values.has(setting)),
      setting => choice.values.get(setting),
    );
  if (!holdsHere(must)) return [];
  const told = [...choice.positions].filter(([name]) => watched.includes(name));
  return [
    {
      holds: world.holds.map((holds, index) => holds && holdsHere(holders[index] ?? [])),
      positions: new Map([...world.positions, ...told]),
      values: new Map([...world.values, ...choice.values]),
    },
  ];
}

/** A choice for some settings, or every one that some conditions name: their values, and positions that give any. */
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
        positions: new Map([...positions, ...choice.positions]),
      })),
    );
  return assignments;
}

/** What can be chosen, variable by variable: a setting’s value, or a switch’s position and the settings it gives. */
function variablesOf(
  conditions: readonly Condition[],
  sourceOf: SourceOf,
  stepped: ReadonlySet<Setting>,
): readonly (readonly Assignment[])[] {
  const bySwitch = new Map<TwoPositionSwitchName, SwitchTable[]>();
  const variables: (readonly Assignment[])[] = [];
  for (const setting of new Set(conditions.map(condition => condition.setting))) {
    const source = sourceOf(setting);
    if (source.kind === 'switch')
      bySwitch.set(source.name, [...(bySwitch.get(source.name) ?? []), [setting, source.values]]);
    else variables.push(valuesToTry(setting, source, stepped.has(setting) ? null : conditions));
  }
  for (const [name, tables] of bySwitch) variables.push(positionsToTry(name, tables));
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
): readonly Assignment[] {
  const choice = (value: string): Assignment => ({
    values: new Map([[setting, value]]),
    positions: new Map(),
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

/** What each position of a switch gives a setting. */
type SwitchTable = readonly [Setting, ReadonlyMap<Position, string>];

function positionsToTry(name: TwoPositionSwitchName, tables: readonly SwitchTable[]): readonly Assignment[] {
  const positions = new Set(tables.flatMap(([, values]) => [...values.keys()]));
  return [...positions].map(position => ({
    values: new Map(
      tables.flatMap(([setting, values]) => {
        const value = values.get(position);
        return value === undefined ? [] : [[setting, value] as const];
      }),
    ),
    positions: new Map([[name, position]]),
  }));
}
