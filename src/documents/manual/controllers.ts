import { type Binding, bindingsOf } from '../../gestures/bindings.js';
import type { Controller, SeatLetter } from '../../hardware/controllers.js';
import type { Mode, PlayerName, Scheme, SeatsRow } from '../../language/model.js';
import { controlLabel } from '../wording/controls.js';
import { isPlainGesture, type Speech, shortGesture } from '../wording/gestures.js';
import { controllerWords } from '../wording/machine.js';
import { actionWords } from '../wording/rows.js';
import { playerWords } from '../wording/who.js';

/** Chapter 3: each controller in use, with a call-out for each control that does something. */
export interface ControllerView {
  readonly controller: Controller;
  readonly caption: string;
  /** For those who can't see the drawing. */
  readonly text: string;
  readonly calls: readonly CallOut[];
}

/** What stands beside a control in the figure. */
export interface CallOut {
  /** The controls it points at: several where one label covers them (`Stick left or right`). */
  readonly controls: readonly ControlSpot[];
  readonly label: string;
  /** The seats rows in which it does nothing though it is plugged in: `Not in: Alone.`; empty where none. */
  readonly seats: string;
  readonly uses: readonly ControlUse[];
}

export interface ControlSpot {
  readonly name: string;
  readonly seat: SeatLetter;
}

export interface ControlUse {
  /** Empty where all of the controller's uses are in one mode. */
  readonly mode: string;
  /** The player's sentence. */
  readonly words: string;
  /** The action's name, where there is no room for its sentence. */
  readonly name: string;
  /** `tap`, `left player`; empty where nothing needs telling. */
  readonly note: string;
}

interface Use {
  readonly mode: Mode;
  readonly seats: SeatsRow;
  readonly binding: Binding;
  readonly spot: ControlSpot;
  readonly player: PlayerName | 'anyone';
  readonly isChord: boolean;
}

/** The controllers that somebody in some seats row holds or can name, each once, in the order of the seats. */
export function controllersInUse(scheme: Scheme): readonly Controller[] {
  const plugged = scheme.seats.flatMap(({ left, right }) => [left, right]);
  return [...new Set(plugged.filter(controller => controller !== null))];
}

export function viewControllers(scheme: Scheme, speech: Speech): readonly ControllerView[] {
  return controllersInUse(scheme).map(controller => viewController(controller, scheme, speech));
}

function viewController(controller: Controller, scheme: Scheme, speech: Speech): ControllerView {
  const { phrases } = speech;
  const uses = usesOf(controller, scheme);
  const manyModes = new Set(uses.map(({ mode }) => mode)).size > 1;
  const players = playersAt(controller, scheme);
  const calls = mergeGroups(
    controller,
    controller.controls.flatMap(({ name, seat }): CallOut[] => {
      const own = uses.filter(({ spot }) => spot.name === name && spot.seat === seat);
      const said = own.length === 0 ? [] : sayUses(own, manyModes, players, speech);
      const label = controlLabel({ kind: 'control', name, port: null, letter: seat }, phrases);
      const seats = seatsNote(own, controller, scheme, speech);
      return said.length === 0 ? [] : [{ controls: [{ name, seat }], label, seats, uses: said }];
    }),
    speech,
  );
  const name = phrases.sentence(controllerWords(controller, phrases));
  return {
    controller,
    caption: phrases.say('figure controller', { controller: name }),
    text: phrases.say('figure controller text', {
      calls: calls.map(call => callText(call, speech)).join(' '),
    }),
    calls,
  };
}

/** What a call-out says under its label, a line each. */
export function callLines(
  { seats, uses }: CallOut,
  say: Speech['phrases']['say'],
  short = false,
): readonly string[] {
  return [...(seats === '' ? [] : [seats]), ...uses.map(use => useText(use, say, short))];
}

function callText(call: CallOut, { phrases }: Speech): string {
  const { label } = call;
  const said = callLines(call, phrases.say);
  return phrases.say('call out', { control: label, uses: said.join('; ') });
}

/** `Harbour: Warn the ships ahead of you (tap)`. */
export function useText(use: ControlUse, say: Speech['phrases']['say'], short = false): string {
  const words = short ? use.name : use.words;
  const noted = use.note === '' ? words : say('sentence with note', { sentence: words, note: use.note });
  return use.mode === '' ? noted : say('use in mode', { mode: use.mode, words: noted });
}

function usesOf(controller: Controller, scheme: Scheme): readonly Use[] {
  const [profile] = scheme.consoles;
  if (profile === undefined) return [];
  return scheme.modes.flatMap(mode =>
    mode.seats.flatMap(seats =>
      bindingsOf(scheme, mode, seats, profile).flatMap(binding =>
        binding.parts.flatMap((part): Use[] =>
          part.kind === 'control' && part.controller === controller
            ? [
                {
                  mode,
                  seats,
                  binding,
                  spot: { name: part.control.name, seat: part.control.seat },
                  player: binding.player,
                  isChord: binding.parts.length > 1,
                },
              ]
            : [],
        ),
      ),
    ),
  );
}

function playersAt(controller: Controller, scheme: Scheme): ReadonlySet<PlayerName> {
  const seated = scheme.seats.flatMap(({ players }) =>
    players.filter(each => each.controller === controller),
  );
  return new Set(seated.map(({ name }) => name));
}

/** Each action of a mode once, with a note of the gesture where a control does several things. */
function sayUses(
  uses: readonly Use[],
  manyModes: boolean,
  players: ReadonlySet<PlayerName>,
  speech: Speech,
): readonly ControlUse[] {
  const said = new Map<string, ControlUse>();
  for (const use of uses) {
    const { binding, mode } = use;
    const alike = uses.filter(
      other => other.mode === mode && other.binding.actionName === binding.actionName,
    );
    const alone = uses.filter(other => other.mode === mode).every(other => alike.includes(other));
    const notes = [
      ...(alone && isPlainGesture(binding.gesture) && !use.isChord ? [] : [howNote(binding, speech)]),
      ...playerNotes(alike, players, use.spot.seat, speech),
    ];
    const name = binding.action?.name ?? binding.actionName;
    const line: ControlUse = {
      mode: manyModes ? mode.name : '',
      words: binding.action === null ? name : actionWords(binding.action),
      name,
      note: notes.join(', '),
    };
    said.set(`${mode.name}\n${name}\n${line.note}`, line);
  }
  return [...said.values()];
}

/** `tap`; for a chord with all its controls: `Key 1 + Key 2, press`. */
function howNote(binding: Binding, speech: Speech): string {
  const how = shortGesture(binding.gesture, speech);
  if (binding.parts.length < 2) return how;
  const parts = binding.parts.map(part =>
    controlLabel(
      part.kind === 'switch'
        ? { kind: 'switch', name: part.name }
        : { kind: 'control', name: part.control.name, port: null, letter: '' },
      speech.phrases,
    ),
  );
  return `${parts.join(' + ')}, ${how}`;
}

/** The players, where only some of those who hold the controller can do it. */
function playerNotes(
  uses: readonly Use[],
  players: ReadonlySet<PlayerName>,
  seat: SeatLetter,
  { phrases }: Speech,
): readonly string[] {
  const able = new Set(uses.map(({ player }) => player));
  const holders = [...players].filter(name => seat === '' || name.endsWith(seat));
  if (able.has('anyone') || holders.every(name => able.has(name))) return [];
  const named = [...able].filter(name => name !== 'anyone').map(name => playerWords(name, phrases));
  return [phrases.and(named)];
}

/** A part of a controller that only some who plug it in can use, as the second of a pair of paddles. */
function seatsNote(
  uses: readonly Use[],
  controller: Controller,
  scheme: Scheme,
  { phrases }: Speech,
): string {
  const plugged = scheme.seats.filter(({ left, right }) => left === controller || right === controller);
  const able = new Set(uses.map(({ seats }) => seats));
  const idle = plugged.filter(seats => !able.has(seats));
  if (idle.length === 0) return '';
  const names = (rows: readonly SeatsRow[]) => ({ seats: phrases.and(rows.map(({ name }) => name)) });
  return idle.length <= able.size
    ? phrases.say('not in seats', names(idle))
    : phrases.say('only in seats', names([...able]));
}

/** One call-out for the directions of a group that all do the same: the largest group first. */
function mergeGroups(
  controller: Controller,
  calls: readonly CallOut[],
  { phrases }: Speech,
): readonly CallOut[] {
  let merged = [...calls];
  for (const group of controller.groups.toSorted((a, b) => b.members.length - a.members.length)) {
    const names = new Set(group.members.map(({ control }) => control));
    const own = merged.filter(
      ({ controls }) => controls.length === 1 && controls.every(({ name }) => names.has(name)),
    );
    const [first] = own;
    const saying = (call: CallOut | undefined) => JSON.stringify([call?.seats, call?.uses]);
    const isAlike = own.every(call => saying(call) === saying(first));
    if (first === undefined || own.length !== names.size || !isAlike) continue;
    const label = controlLabel({ kind: 'control', name: group.name, port: null, letter: '' }, phrases);
    const one: CallOut = { ...first, controls: own.flatMap(({ controls }) => controls), label };
    merged = merged.flatMap(call => (call === first ? [one] : own.includes(call) ? [] : [call]));
  }
  return merged;
}
