import type { Binding } from '../gestures/bindings.js';
import type { Contact } from '../gestures/contacts.js';
import { frameRate, toNumber } from '../hardware/clocks.js';
import { scanSteps } from '../hardware/port-setup.js';
import { REGISTERS } from '../hardware/registers.js';
import { type Wire, wireOf } from '../hardware/wiring.js';
import { conditionText, effectText } from '../language/as-written.js';
import type { Gesture, Mode, Scheme, Setting } from '../language/model.js';
import type { Handoff, UnitCost } from './model.js';
import { outputKey, outputList } from './outputs.js';
import { hasPots } from './routine/banks.js';
import { contactsOfScheme, maskOf, scanDirection, vblankValue } from './symbols.js';
import { readsByStandard } from './units.js';

export const CONTROLS_FORMAT = { format: 'leverleaf-controls', version: 1 } as const;

/** `controls.json`: the compiled scheme as data. Its form is published as `CONTROLS_SCHEMA`. */
export function writeControlsJson(handoff: Handoff): string {
  return `${JSON.stringify(viewControls(handoff), null, 2)}\n`;
}

function viewControls(handoff: Handoff): object {
  const { scheme } = handoff;
  return {
    ...CONTROLS_FORMAT,
    title: scheme.title.value,
    shortName: scheme.game.shortName.value,
    gameVersion: scheme.game.version,
    readEveryFrames: scheme.game.readEvery.value,
    buttonLatch: scheme.game.latch.value,
    standards: scheme.standards.map(standard => ({
      name: standard.name,
      framesPerSecond: toNumber(frameRate(standard)),
    })),
    consoles: handoff.classes.flatMap(({ number, profiles }) =>
      profiles.map(({ name, switches }) => ({ name, number, switches })),
    ),
    registers: Object.values(REGISTERS).map(({ symbol, address, access, holds }) => ({
      symbol,
      address,
      access,
      holds,
    })),
    seats: scheme.seats.map((seats, number) => ({
      name: seats.name,
      number,
      left: seats.left?.name ?? null,
      right: seats.right?.name ?? null,
      players: seats.players.map(({ name, port, controller }) => ({
        name,
        port,
        controller: controller.name,
      })),
    })),
    controls: contactsOfScheme(scheme).map(viewControl),
    settings: scheme.settings.map(viewSetting),
    actions: scheme.actions.map(({ name, words, short, need }, number) => ({
      name,
      number,
      words,
      short: short?.value ?? '',
      need,
    })),
    startMode: scheme.startMode.name,
    modes: viewModes(handoff),
    variations: scheme.variations.map(({ name, seats, values, words }) => ({
      name,
      seats: seats.map(row => row.name),
      values: [...values].map(([setting, value]) => ({ setting: setting.name, value })),
      words,
    })),
    ram: {
      bytes: handoff.ram.size,
      shared: handoff.ram.shared.map(({ symbol, offset, kind, holds }) => ({ symbol, offset, kind, holds })),
    },
    symbols: handoff.symbols.flatMap(({ entries }) => entries.map(({ name, value }) => ({ name, value }))),
  };
}

const bitOf = ({ register, bit, mask }: { register: string; bit: number; mask: number }) => ({
  register,
  bit,
  mask,
});

function viewControl(contact: Contact): object {
  const wire = wireOf(contact);
  return { name: contact.id, kind: wire.kind, mask: maskOf(wire), ...viewWire(wire) };
}

function viewWire(wire: Wire): object {
  switch (wire.kind) {
    case 'line':
      return { bits: [bitOf(wire.bit)], engagedReads: wire.engagedReads };
    case 'two-position':
      return { bits: [bitOf(wire.bit)], positions: wire.positions };
    case 'matrix':
      return {
        bits: [bitOf(wire.bit)],
        engagedReads: 0,
        row: wire.row,
        column: wire.column,
        drive: bitOf(wire.drive),
      };
    case 'pot':
      return { bits: [bitOf(wire.bit)] };
    case 'gray':
      return { bits: [bitOf(wire.high), bitOf(wire.low)] };
    default:
      return wire satisfies never;
  }
}

function viewSetting({ name, values, startsAs, setBy }: Setting): object {
  const by =
    setBy.kind === 'game'
      ? { kind: 'game' }
      : {
          kind: 'switch',
          switch: setBy.name,
          positions: [...setBy.values].map(([position, value]) => ({ position, value })),
        };
  return { name, values, startsAs, setBy: by };
}

function viewModes(handoff: Handoff): readonly object[] {
  const { scheme } = handoff;
  const costs = handoff.costs.flatMap(({ units }) => units);
  return scheme.modes.map((mode, number) => ({
    name: mode.name,
    number,
    kind: mode.kind,
    seats: mode.seats.map(({ name }) => name),
    outputs: outputList(handoff.outputs.get(mode)).map(
      ({ symbol, actionName, player, direction, byte, bit }) => ({
        symbol,
        action: actionName,
        player,
        direction,
        byte,
        bit,
        mask: 1 << bit,
      }),
    ),
    gameRows: viewGameRows(mode),
    units: costs.filter(({ routine }) => routine.unit.mode === mode).map(cost => viewUnit(handoff, cost)),
  }));
}

function viewGameRows(mode: Mode): readonly object[] {
  return mode.rows
    .filter(({ who }) => who.value.kind === 'game')
    .map(({ action, conditions, effects }) => ({
      action: action.name,
      when: conditions.map(conditionText),
      effects: effects.map(effectText),
    }));
}

function viewUnit(handoff: Handoff, cost: UnitCost): object {
  const { scheme, ram } = handoff;
  const { unit, plan } = cost.routine;
  const wires = plan.map.banks.flatMap(({ lines }) => lines.map(({ wire }) => wire));
  return {
    seats: unit.seats.name,
    consoles: unit.consoles.profiles.map(({ name }) => name),
    swacnt: scanDirection(cost.routine),
    vblank: vblankValue(scheme, hasPots(unit.seats), true),
    keypadRows: scanSteps(wires).map(({ row }) => row),
    routine: {
      read: cost.routine.read.label,
      enter: cost.routine.enter.label,
      start: cost.routine.start?.label ?? null,
      scan: cost.routine.scan.map(({ label }) => label),
      worstCycles: cost.cycles,
      worstCyclesOfRead: cost.read.cycles,
      worstCyclesOfScan: cost.scan.map(({ cycles }) => cycles),
      moreCyclesElsewhere: [cost.read, ...cost.scan].reduce((sum, each) => sum + each.moreElsewhere, 0),
      romBytes: cost.romBytes,
      ramBytes: cost.ramBytes,
    },
    ram: (ram.own.get(cost.code) ?? []).map(({ symbol, offset, kind, holds }) => ({
      symbol,
      offset,
      kind,
      holds,
    })),
    bindings: [...unit.bindings, ...unit.tooLong].map(binding => viewBinding(handoff, binding, unit.tooLong)),
  };
}

function viewBinding({ scheme, outputs }: Handoff, binding: Binding, tooLong: readonly Binding[]): object {
  const output = outputs.get(binding.mode)?.get(outputKey(binding));
  return {
    order: binding.order,
    alternative: binding.alternative,
    player: binding.player,
    action: binding.actionName,
    direction: binding.direction,
    controls: binding.parts.map(({ id }) => id),
    gesture: viewGesture(scheme, binding.gesture),
    when: binding.conditions.map(conditionText),
    effects: binding.effects.map(effectText),
    insteadOf: binding.insteadOf.map(({ name }) => name),
    alongWith: binding.alongWith.map(({ name }) => name),
    isFallback: binding.origin.kind === 'fallback',
    output: tooLong.includes(binding) ? null : (output?.symbol ?? null),
  };
}

export function viewGesture(scheme: Scheme, gesture: Gesture): object {
  if ('position' in gesture) return { kind: gesture.kind, position: gesture.position };
  if (!('time' in gesture)) return { kind: gesture.kind };
  const reads = [...readsByStandard(scheme, gesture)].map(([standard, count]) => ({ standard, count }));
  return { kind: gesture.kind, time: gesture.time.text, reads };
}
