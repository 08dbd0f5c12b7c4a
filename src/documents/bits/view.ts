import { CYCLES_PER_LINE, cpuClock, frameRate, type TvStandard, toNumber } from '../../hardware/clocks.js';
import { RAM_BYTES } from '../../hardware/registers.js';
import type { Scheme, SeatsRow } from '../../language/model.js';
import { joinSetups, joinTables } from './alike.js';
import { type ConsoleTable, type SettingView, viewConsoles, viewSettings } from './console-view.js';
import { type GestureMeaning, viewGestures } from './gesture-legend.js';
import { type ModeTable, viewMode } from './mode-view.js';
import { type PortView, viewPorts } from './port-view.js';
import { type Procedure, viewProcedures } from './procedures.js';
import { type RamView, viewRam } from './ram-view.js';
import { type RegisterMap, viewRegisterMaps } from './register-maps.js';
import { keysOfSeats, type SetupView, viewSetup } from './setup-view.js';
import { type SourcedFact, viewSources } from './source-view.js';
import { millisecondsText, readEveryText, readPeriodMs } from './words.js';

/** Everything that the bit-level appendix says; all arithmetic and wording done. */
export interface BitsView {
  readonly title: string;
  readonly version: string;
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly standards: readonly StandardView[];
  readonly gestures: readonly GestureMeaning[];
  readonly seats: readonly SeatsView[];
  readonly setups: readonly SetupView[];
  readonly modes: readonly ModeTable[];
  readonly settings: readonly SettingView[];
  readonly consoles: ConsoleTable;
  readonly procedures: readonly Procedure[];
  readonly ram: RamView;
  readonly ramBytes: number;
  /** Empty where there are no vectors. */
  readonly vectorsGuide: readonly string[];
  readonly sources: readonly SourcedFact[];
}

export interface StandardView {
  readonly name: string;
  readonly cpuClock: string;
  readonly lines: string;
  readonly frameRate: string;
  readonly readPeriod: string;
  readonly cyclesPerRead: string;
}

export interface SeatsView {
  readonly row: SeatsRow;
  readonly players: string;
  readonly ports: readonly PortView[];
  readonly maps: readonly RegisterMap[];
}

/** What a generated reading routine can tell of itself, in place of the appendix's own reckoning. */
export interface RoutineFacts {
  readonly ram: RamView;
  /** How the acceptance vectors are run against a build, a paragraph each. */
  readonly vectorsGuide: readonly string[];
  /** Worst case of each mode and seats row: CPU cycles a read, bytes of ROM. */
  readonly costs: readonly {
    readonly mode: string;
    readonly seats: string;
    readonly cycles: number;
    readonly bytes: number;
  }[];
}

export function viewBits(scheme: Scheme, routine?: RoutineFacts): BitsView {
  const tables = scheme.modes.flatMap(mode => mode.seats.map(seats => ({ mode, seats })));
  const keys = new Map(scheme.seats.map(seats => [seats, keysOfSeats(scheme, seats)]));
  const ram = routine?.ram ?? viewRam(scheme);
  return {
    title: scheme.title.value,
    version: scheme.game.version,
    facts: viewFacts(scheme, ram),
    standards: scheme.standards.map(standard => viewStandard(standard, scheme.game.readEvery.value)),
    gestures: viewGestures(scheme),
    seats: scheme.seats.map(row => viewSeats(scheme, row)),
    setups: joinSetups(tables.map(({ mode, seats }) => viewSetup(scheme, mode, seats, keys.get(seats)))),
    modes: joinTables(
      tables.map(({ mode, seats }) => viewMode(scheme, mode, seats, costOf(routine, mode.name, seats.name))),
    ),
    settings: viewSettings(scheme),
    consoles: viewConsoles(scheme),
    procedures: viewProcedures(scheme),
    ram,
    ramBytes: RAM_BYTES,
    vectorsGuide: routine?.vectorsGuide ?? [],
    sources: viewSources(scheme),
  };
}

const costOf = (routine: RoutineFacts | undefined, mode: string, seats: string) =>
  routine?.costs.find(cost => cost.mode === mode && cost.seats === seats);

function viewFacts({ game, consoles, standards }: Scheme, ram: RamView): BitsView['facts'] {
  return [
    ['Symbols begin with', game.shortName.value],
    ['Inputs are read', readEveryText(game.readEvery.value)],
    ['Button latch', game.latch.value],
    ['TV standards', standards.map(({ name }) => name).join(', ')],
    ['Consoles', consoles.map(({ name }) => name).join(', ')],
    ['State in RAM', `${ram.total} of ${RAM_BYTES} bytes`],
  ];
}

function viewStandard(standard: TvStandard, every: number): StandardView {
  const cycles = standard.linesPerFrame * CYCLES_PER_LINE * every;
  return {
    name: standard.name,
    cpuClock: `${(toNumber(cpuClock(standard)) / 1e6).toFixed(6)} MHz`,
    lines: `${standard.linesPerFrame} of ${CYCLES_PER_LINE} cycles`,
    frameRate: `${toNumber(frameRate(standard)).toFixed(4)} Hz`,
    readPeriod: millisecondsText(readPeriodMs(standard, every)),
    cyclesPerRead: String(cycles),
  };
}

function viewSeats(scheme: Scheme, row: SeatsRow): SeatsView {
  const names = row.players.map(({ name, controller }) => `${name} (${controller.name})`);
  return {
    row,
    players: `${row.players.length} ${row.players.length === 1 ? 'player' : 'players'}: ${names.join(', ')}`,
    ports: viewPorts(row),
    maps: viewRegisterMaps(scheme, row),
  };
}
