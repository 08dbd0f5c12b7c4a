import type { Report } from '../findings/report.js';
import { isImpossible } from '../gestures/automaton.js';
import { contactType } from '../gestures/contacts.js';
import { fitsParts } from '../gestures/fit.js';
import type { Mode, Scheme } from '../language/model.js';
import { readsOf } from '../language/time.js';
import type { CheckedRow } from './checked-row.js';
import { checkedRowsOf } from './rows.js';
import { detailsOf, detailsOfBindings, gestureText, unique } from './text.js';

/** Gestures of a mode that their control can’t make, and gestures that no hand is quick enough for. */
export function checkGestureFit(scheme: Scheme, mode: Mode, report: Report): void {
  for (const row of checkedRowsOf(scheme, mode)) {
    checkControl(row, report);
    checkTime(scheme, row, report);
  }
}

type ContactType = ReturnType<typeof contactType>;

/** What a control does, and what can be asked of it. */
const CONTROLS: Readonly<Record<ContactType, { readonly kind: string; readonly fitting: string }>> = {
  momentary: {
    kind: 'is pressed and let go',
    fitting: '`press`, `release`, `held`, `hold T`, `tap under T`, `double tap within T` or `repeat every T`',
  },
  'two-position': { kind: 'has two positions', fitting: '`at P`, `flip to P` or `flip`' },
  turning: { kind: 'is turned', fitting: '`turn`' },
};

function checkControl(row: CheckedRow, report: Report): void {
  const gesture = row.gesture.value;
  const found = [...row.bindings].flatMap(([seats, bindings]) =>
    bindings.filter(({ parts }) => !fitsParts(gesture, parts)).map(binding => ({ seats, binding })),
  );
  const [first] = found;
  if (first === undefined) return;
  const { parts } = first.binding;
  const part = parts.find(each => !fitsParts(gesture, [each])) ?? parts[0];
  if (part === undefined) return;
  report(
    'wrong-gesture',
    row.gesture.at,
    {
      action: row.actionName,
      mode: row.mode.name,
      gesture: gestureText(gesture),
      control: part.id,
      ...CONTROLS[contactType(part)],
    },
    {
      ...detailsOfBindings(row, found),
      controls: unique(found.flatMap(({ binding }) => binding.parts.map(({ id }) => id))),
    },
  );
}

/** A tap or a double tap whose time is a single read on some standard. */
function checkTime(scheme: Scheme, row: CheckedRow, report: Report): void {
  const gesture = row.gesture.value;
  if (gesture.kind !== 'tap' && gesture.kind !== 'double tap') return;
  const every = scheme.game.readEvery.value;
  const standards = scheme.standards.filter(standard =>
    isImpossible({ kind: gesture.kind, reads: readsOf(gesture.time, standard, every) }),
  );
  if (standards.length === 0) return;
  report(
    'impossible-gesture',
    row.gesture.at,
    { action: row.actionName, mode: row.mode.name, gesture: gestureText(gesture), time: gesture.time.text },
    { ...detailsOf(row), standards: standards.map(({ name }) => name) },
  );
}
