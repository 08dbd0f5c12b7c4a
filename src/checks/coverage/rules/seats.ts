import type { Binding } from '../../../gestures/bindings.js';
import { controlContact } from '../../../gestures/contacts.js';
import type { Control } from '../../../hardware/controllers.js';
import type { Port } from '../../../hardware/ports.js';
import { PORTS } from '../../../hardware/ports.js';
import type { Action, Mode, PlayerName, SeatsRow } from '../../../language/model.js';
import { createMemory } from '../../../memory.js';
import { chordText } from '../../text.js';
import type { Doer } from '../doings.js';
import type { Facts } from '../facts.js';
import { type Hold, keyOf } from '../holds.js';
import type { OfferedMode } from '../offers.js';
import type { Survey } from '../survey.js';
import { acrossSeats } from '../survey.js';

const LIST = new Intl.ListFormat('en', { type: 'conjunction' });

/** seat-gap, one-sided, idle-control. */
export function seatHolds(survey: Survey): readonly Hold[] {
  return [...seatGaps(survey), ...survey.facts.flatMap(oneSided), ...idleControls(survey)];
}

function seatGaps(survey: Survey): readonly Hold[] {
  return acrossSeats(survey).flatMap(({ own, situations, peers }) =>
    [...own.offer.modes].flatMap(([mode, { actions: here }]) => {
      const missed = new Map<Action, Binding>();
      for (const peer of peers)
        for (const [action, binding] of peer.offer.modes.get(mode)?.actions ?? [])
          if (!here.has(action) && !missed.has(action)) missed.set(action, binding);
      return [...missed].map(
        ([action, binding]): Hold => ({
          rule: 'seat-gap',
          key: keyOf(mode.name, action.name),
          situations,
          spoils: null,
          tell: (report, { text, details }) =>
            report(
              'seat-gap',
              binding.at,
              { mode: mode.name, action: action.name, where: text },
              { mode: mode.name, actions: [action.name], ...details },
            ),
        }),
      );
    }),
  );
}

function oneSided({ offer }: Facts): readonly Hold[] {
  const { seats } = offer;
  return [...offer.modes].flatMap(([mode, offered]) =>
    remembered([offered, seats], () => sidesOf(offered, seats)).map(side => oneSidedHold(offer, mode, side)),
  );
}

/** An action that only some of the seated players have. */
interface Side {
  readonly action: Action;
  readonly first: Binding;
  readonly players: ReadonlySet<Doer>;
  readonly lacking: readonly PlayerName[];
}

const remembered = createMemory<readonly Side[]>();

function sidesOf({ doings }: OfferedMode, seats: SeatsRow): readonly Side[] {
  const sides = new Map<Action, { readonly first: Binding; readonly players: Set<Doer> }>();
  for (const { action, doers, step } of doings) {
    if (action === null || step.kind !== 'binding' || step.binding.player === 'anyone') continue;
    const side = sides.get(action) ?? { first: step.binding, players: new Set() };
    sides.set(action, side);
    for (const doer of doers) side.players.add(doer);
  }
  return [...sides].flatMap(([action, { first, players }]) => {
    const lacking = seats.players.map(({ name }) => name).filter(name => !players.has(name));
    return lacking.length === 0 ? [] : [{ action, first, players, lacking }];
  });
}

function oneSidedHold(
  { situations, seats }: Facts['offer'],
  mode: Mode,
  { action, first, players, lacking }: Side,
): Hold {
  const having = seats.players.map(({ name }) => name).filter(name => players.has(name));
  return {
    rule: 'one-sided',
    key: keyOf(mode.name, action.name, having.join(), lacking.join()),
    situations,
    spoils: null,
    tell: (report, { text, details }) =>
      report(
        'one-sided',
        first.at,
        {
          mode: mode.name,
          action: action.name,
          having: playersText(having),
          lacking: playersText(lacking),
          where: text,
        },
        {
          mode: mode.name,
          players: lacking,
          actions: [action.name],
          ...details,
          ...(isForEach(first) ? { waysOut: [missingControlWay(first, lacking), ON_PURPOSE] } : {}),
        },
      ),
  };
}

/** The row is for each player, but not every controller has its control. */
const isForEach = ({ origin }: Binding): boolean => origin.row?.who.value.kind === 'each';

function missingControlWay(
  { origin, alternative, actionName }: Binding,
  lacking: readonly PlayerName[],
): string {
  const chord = origin.row?.alternatives[alternative];
  const control = chord === undefined ? 'its control' : `\`${chordText(chord)}\``;
  return `The controller of ${playersText(lacking)} lacks ${control}: add a row for “${actionName}” with a control that it has.`;
}

const ON_PURPOSE = 'If the roles differ on purpose, accept the note with that reason.';

const playersText = (names: readonly PlayerName[]): string =>
  `the ${LIST.format(names)} player${names.length > 1 ? 's' : ''}`;

/** Used on no console: what a fallback uses is not idle. */
function idleControls({ scheme, facts }: Survey): readonly Hold[] {
  return scheme.seats.flatMap(seats => {
    const own = facts.filter(({ offer }) => offer.seats === seats);
    const used = new Set<string>();
    for (const { bindings } of new Set(own.flatMap(({ offer }) => [...offer.modes.values()])))
      for (const { parts } of bindings) for (const { id } of parts) used.add(id);
    const situations = own.flatMap(({ offer }) => offer.situations);
    return PORTS.flatMap(port => {
      const idle = idleOf(seats, port, used);
      return idle.length === 0 ? [] : [idleHold(seats, port, idle, situations)];
    });
  });
}

interface Idle {
  readonly id: string;
  readonly control: Control;
}

/** The unused controls of the seated players at a port. */
function idleOf(seats: SeatsRow, port: Port, used: ReadonlySet<string>): readonly Idle[] {
  return seats.players
    .filter(player => player.port === port)
    .flatMap(({ letter, controller }) =>
      controller.controls
        .filter(({ seat, wiring }) => seat === letter && wiring.kind !== 'matrix')
        .map(control => ({ id: controlContact(port, controller, control).id, control })),
    )
    .filter(({ id }) => !used.has(id));
}

function idleHold(seats: SeatsRow, port: Port, idle: readonly Idle[], situations: Hold['situations']): Hold {
  const names = idle.map(({ control }) => (control.seat === '' ? '' : `${control.seat} `) + control.name);
  const controller = seats[port]?.name ?? '';
  return {
    rule: 'idle-control',
    key: keyOf(seats.name, port),
    situations,
    spoils: null,
    tell: (report, { details }) =>
      report(
        'idle-control',
        seats.at,
        { controls: LIST.format(names), port, controller, where: `in ${seats.name}` },
        { controls: idle.map(({ id }) => id), ...details },
      ),
  };
}
