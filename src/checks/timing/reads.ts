import { relatedTo } from '../../findings/finding.js';
import type { Report } from '../../findings/report.js';
import type { Contact } from '../../gestures/contacts.js';
import { frameRate, type TvStandard, toNumber } from '../../hardware/clocks.js';
import { WHEEL } from '../../hardware/turning.js';
import type { Gesture, Scheme } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOfBindings, listText, unique } from '../text.js';
import { isButtonInput } from '../wiring/latch.js';

/** The shortest deliberate press, seconds (from memory). */
const SHORTEST_PRESS = { numerator: 1n, denominator: 20n };

const MISSABLE: ReadonlySet<Gesture['kind']> = new Set(['press', 'release', 'tap', 'double tap']);

/** `missed-press` and `wheel-loses-steps`: what goes by between two reads. */
export function checkReads(scheme: Scheme, rows: readonly CheckedRow[], report: Report): void {
  if (scheme.game.readEvery.value === 1) return;
  const slow = scheme.standards.filter(standard => isSlow(standard, scheme.game.readEvery.value));
  if (slow.length > 0) for (const row of rows) checkMissed(scheme, slow, row, report);
  checkWheel(scheme, rows, report);
}

/** True where p/f is more than the shortest press, exactly. */
function isSlow(standard: TvStandard, every: number): boolean {
  const rate = frameRate(standard);
  return (
    BigInt(every) * rate.denominator * SHORTEST_PRESS.denominator > rate.numerator * SHORTEST_PRESS.numerator
  );
}

function checkMissed(scheme: Scheme, slow: readonly TvStandard[], row: CheckedRow, report: Report): void {
  if (!MISSABLE.has(row.gesture.value.kind)) return;
  const isHeld = (part: Contact) => scheme.game.latch.value !== 'off' && isButtonInput(part);
  const found = [...row.bindings].flatMap(([seats, bindings]) =>
    bindings.filter(({ parts }) => !parts.every(isHeld)).map(binding => ({ seats, binding })),
  );
  if (found.length === 0) return;
  const controls = unique(
    found.flatMap(({ binding }) => binding.parts.filter(part => !isHeld(part)).map(({ id }) => id)),
  );
  const longest = Math.max(
    ...slow.map(standard => (scheme.game.readEvery.value * 1000) / toNumber(frameRate(standard))),
  );
  report(
    'missed-press',
    row.gesture.at,
    {
      interval: longest.toFixed(0),
      action: row.actionName,
      mode: row.mode.name,
      control: listText(controls, 'or'),
    },
    {
      ...detailsOfBindings(row, found),
      standards: slow.map(({ name }) => name),
      controls,
      related: [relatedTo(scheme.game.readEvery.at, 'how often inputs are read is set here')],
    },
  );
}

/** One finding for the scheme: how often inputs are read is one fact of it. */
function checkWheel(scheme: Scheme, rows: readonly CheckedRow[], report: Report): void {
  const found = rows.flatMap(row =>
    [...row.bindings].flatMap(([seats, bindings]) =>
      bindings
        .flatMap(({ parts }) => parts)
        .filter(part => part.kind === 'control' && part.control.wiring.kind === 'gray')
        .map(part => ({ row, seats, control: part.id })),
    ),
  );
  if (found.length === 0) return;
  const every = scheme.game.readEvery.value;
  const turns = scheme.standards.map(standard => {
    const perSecond = toNumber(frameRate(standard)) / every / WHEEL.stepsPerTurn;
    return `${perSecond.toFixed(2)} turns a second on ${standard.name}`;
  });
  const used = unique(found.map(({ row }) => row));
  report(
    'wheel-loses-steps',
    scheme.game.readEvery.at,
    { frames: every, turns: listText(turns) },
    {
      seats: scheme.seats.filter(seats => found.some(one => one.seats === seats)).map(({ name }) => name),
      standards: scheme.standards.map(({ name }) => name),
      actions: unique(used.map(({ actionName }) => actionName)),
      controls: unique(found.map(({ control }) => control)),
      related: used.map(row => relatedTo(row.at, `${row.mode.name} uses the wheel here`)),
    },
  );
}
