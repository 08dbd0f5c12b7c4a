import type { Report } from '../findings/report.js';
import { CONTROLLERS, type Controller } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import { badValue, createSpot, type Spot, unknownName } from './faults.js';
import type { OwnController, PlayerName, SeatedPlayer, SeatsRow } from './model.js';
import { createNames, type Names, type NamesBeingFilled, resolveName } from './names.js';
import { readName } from './naming.js';
import type { Section } from './sections.js';
import { normal, tidy } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf, splitWords, type Words } from './words.js';

const MOST_PLAYERS = 4;

export function readSeats(
  section: Section | undefined,
  own: readonly OwnController[],
  report: Report,
): NamesBeingFilled<SeatsRow> {
  const seats = createNames<SeatsRow>('seats row', 'seats rows');
  if (section === undefined) return seats;
  const plain = createSpot(report, '');
  const controllers = [...CONTROLLERS, ...own.map(({ controller }) => controller)];
  for (const row of readTable(section, plain).rows) {
    const words = needCell(row, 'Seats', plain, 'Write a name for this way to sit down and play.');
    if (words === null) continue;
    const name = readName(words, 'Seats', plain);
    const spot = createSpot(report, ` of “${name}”`, { seats: [name] });
    const left = readPort(row, 'Left port', controllers, spot, words);
    const right = readPort(row, 'Right port', controllers, spot, words);
    const places = [...seatsAt('left', left.controller), ...seatsAt('right', right.controller)];
    const known = left.known && right.known;
    const players = readPlayers(row, known ? places.length : null, spot, words);
    seats.add(
      name,
      {
        name,
        at: placeOf(words),
        players: places.slice(0, players),
        left: left.controller,
        right: right.controller,
      },
      words,
      plain,
    );
  }
  return seats;
}

/** `known` is false where the cell can't be understood. */
function readPort(
  row: Row,
  column: string,
  controllers: readonly Controller[],
  spot: Spot,
  name: Words,
): { readonly controller: Controller | null; readonly known: boolean } {
  const wayOut = 'Write the controller that is plugged in, or “empty”.';
  const words = needCell(row, column, spot, wayOut, placeOf(name));
  if (words === null) return { controller: null, known: false };
  if (normal(words.text) === 'empty') return { controller: null, known: true };
  const controller = controllers.find(candidate => normal(candidate.name) === normal(words.text));
  if (controller !== undefined) return { controller, known: true };
  const candidates = [...controllers.map(candidate => candidate.name), 'empty'];
  unknownName(
    spot,
    words,
    'controller',
    candidates,
    'Describe it in `## Controllers`, a row for each control.',
  );
  return { controller: null, known: false };
}

function seatsAt(port: Port, controller: Controller | null): readonly SeatedPlayer[] {
  if (controller === null) return [];
  return controller.seats.map(letter => {
    const name: PlayerName = letter === '' ? port : `${port} ${letter}`;
    return { name, port, letter, controller };
  });
}

/** @param places seats there are; null where that is not known */
function readPlayers(row: Row, places: number | null, spot: Spot, name: Words): number {
  const words = needCell(row, 'Players', spot, 'Write how many play, 1 to 4.', placeOf(name));
  if (words === null) return MOST_PLAYERS;
  const count = /^\d{1,3}$/.test(words.text) ? Number(words.text) : Number.NaN;
  if (!(count >= 1 && count <= MOST_PLAYERS))
    badValue(spot, words, 'Players', `“${tidy(words.text)}” is not a number from 1 to ${MOST_PLAYERS}`, [
      `Write a number from 1 to ${MOST_PLAYERS}.`,
    ]);
  else if (places !== null && count > places)
    badValue(spot, words, 'Players', `there are ${count} players, but seats for ${places} only`, [
      places === 0
        ? 'Plug a controller in.'
        : `Write ${places}, or plug another controller in (paddles seat two).`,
    ]);
  return Number.isNaN(count) ? MOST_PLAYERS : count;
}

/** A list of seats rows, in the scheme's own order; null (and findings) where one can't be read. */
export function readSeatsList(
  words: Words,
  seats: Names<SeatsRow>,
  column: string,
  spot: Spot,
): readonly SeatsRow[] | null {
  const named = splitWords(words, /[,;]/g).map(part => readOne(part, words, seats, column, spot));
  const listed = new Set<SeatsRow>();
  for (const row of named) {
    if (row === null) continue;
    if (listed.has(row))
      badValue(spot, words, column, `“${row.name}” is listed twice`, ['Take one of the two out.']);
    listed.add(row);
  }
  if (named.includes(null)) return null;
  return seats.all().filter(row => listed.has(row));
}

function readOne(
  part: Words,
  whole: Words,
  seats: Names<SeatsRow>,
  column: string,
  spot: Spot,
): SeatsRow | null {
  if (part.text !== '') return resolveName(part, seats, spot, 'Define it in `## Seats`.', ', ');
  badValue(spot, whole, column, `a name is missing in “${tidy(whole.text)}”`, ['Take the extra comma out.']);
  return null;
}
