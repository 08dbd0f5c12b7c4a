import { relatedTo } from '../../findings/finding.js';
import type { Report } from '../../findings/report.js';
import type { Binding } from '../../gestures/bindings.js';
import type { Contact } from '../../gestures/contacts.js';
import type { Gesture, Mode, Scheme, SeatsRow } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOfBindings, gestureText, listText, unique } from '../text.js';

/** The gestures that need to see a button let go; all are for momentary controls. */
const NEEDS_RELEASE: ReadonlySet<Gesture['kind']> = new Set([
  'release',
  'tap',
  'hold',
  'held',
  'double tap',
  'repeat',
]);

/** `latch-with-keypad`, `latched-release` and `latch-clears-both`. */
export function checkLatch(scheme: Scheme, rows: readonly CheckedRow[], report: Report): void {
  const latch = scheme.game.latch.value;
  if (latch === 'off') return;
  checkKeypads(scheme, report);
  if (latch !== 'cleared on use') return;
  for (const row of rows) checkRelease(row, report);
  for (const mode of scheme.modes) {
    checkBoth(
      scheme,
      mode,
      rows.filter(row => row.mode === mode),
      report,
    );
  }
}

/** True for a contact on one of the two inputs that can be latched (a keypad's third column aside). */
export function isButtonInput(contact: Contact): boolean {
  return (
    contact.kind === 'control' &&
    contact.control.wiring.kind === 'contact' &&
    contact.control.wiring.line === 'button'
  );
}

function checkKeypads(scheme: Scheme, report: Report): void {
  const withKeypad = scheme.seats.filter(({ left, right }) =>
    [left, right].some(controller => controller?.controls.some(({ wiring }) => wiring.kind === 'matrix')),
  );
  if (withKeypad.length === 0) return;
  const names = withKeypad.map(({ name }) => name);
  report(
    'latch-with-keypad',
    scheme.game.latch.at,
    { latch: `“${scheme.game.latch.value}”`, seats: listText(names) },
    {
      seats: names,
      related: withKeypad.map(({ name, at }) => relatedTo(at, `${name} has a keypad`)),
    },
  );
}

function checkRelease(row: CheckedRow, report: Report): void {
  if (!NEEDS_RELEASE.has(row.gesture.value.kind)) return;
  const found = buttonBindings([row]);
  if (found.length === 0) return;
  const controls = unique(
    found.flatMap(({ binding }) => binding.parts.filter(isButtonInput).map(({ id }) => id)),
  );
  report(
    'latched-release',
    row.gesture.at,
    {
      action: row.actionName,
      mode: row.mode.name,
      control: listText(controls, 'or'),
      gesture: gestureText(row.gesture.value),
    },
    { ...detailsOfBindings(row, found), controls },
  );
}

function checkBoth(scheme: Scheme, mode: Mode, rows: readonly CheckedRow[], report: Report): void {
  const found = buttonBindings(rows);
  const faulty = unique(found.map(({ seats }) => seats)).flatMap(seats => {
    const players = unique(
      found.filter(one => one.seats === seats).flatMap(one => playersOf(one.binding, seats)),
    );
    return players.length < 2 ? [] : [{ seats, players }];
  });
  if (faulty.length === 0) return;
  const players = unique(faulty.flatMap(one => one.players));
  report(
    'latch-clears-both',
    mode.at,
    { mode: mode.name, players: listText(players.map(name => `the ${name} player`)) },
    {
      mode: mode.name,
      seats: faulty.map(({ seats }) => seats.name),
      players,
      related: [relatedTo(scheme.game.latch.at, 'the latch is set here')],
    },
  );
}

function buttonBindings(
  rows: readonly CheckedRow[],
): readonly { readonly seats: SeatsRow; readonly binding: Binding }[] {
  return rows.flatMap(row =>
    [...row.bindings].flatMap(([seats, bindings]) =>
      bindings.filter(({ parts }) => parts.some(isButtonInput)).map(binding => ({ seats, binding })),
    ),
  );
}

/** Whose binding it is: an `anyone` row is every player's whose button it is. */
function playersOf(binding: Binding, seats: SeatsRow): readonly string[] {
  if (binding.player !== 'anyone') return [binding.player];
  const ports = binding.parts.flatMap(part =>
    part.kind === 'control' && isButtonInput(part) ? [part.port] : [],
  );
  return seats.players.filter(({ port }) => ports.includes(port)).map(({ name }) => name);
}
