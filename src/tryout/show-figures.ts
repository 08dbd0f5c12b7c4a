import { keyLabelsOf, labelText } from '../documents/overlays/key-labels.js';
import type { Phrases } from '../documents/phrase-book.js';
import type { Play } from '../gestures/play.js';
import { PORTS } from '../hardware/ports.js';
import { PADDLE, WHEEL } from '../hardware/turning.js';
import type { Mode } from '../language/model.js';
import { elementsBy, setText } from './dom.js';
import { isWheel } from './turning.js';

/** Shows the art of what is plugged in, and how it is worked at this read. */
export function createFigures({ scheme, profile, seats, contacts }: Play) {
  showOnly('console', scheme.consoles.indexOf(profile));
  showOnly('seats', scheme.seats.indexOf(seats));
  const shown = [...document.querySelectorAll('.art:not([hidden])')];
  const byContact = new Map<string, readonly Element[]>(
    contacts.map(({ id }) => [id, shown.flatMap(art => elementsBy(art, 'contact').get(id) ?? [])]),
  );
  const knobs = shown.flatMap(art => [...art.querySelectorAll<SVGGElement>('.knob')]);
  let before: readonly number[] | null = null;
  return {
    show(now: readonly number[]) {
      contacts.forEach((contact, index) => {
        const level = now[index] ?? 0;
        if (before !== null && before[index] === level) return;
        for (const each of byContact.get(contact.id) ?? []) {
          if (each.classList.contains('turns')) rotate(each, contact, level);
          else each.classList.toggle('on', level === 1);
        }
      });
      if (before === null || now.some((level, index) => before?.[index] !== level)) knobs.forEach(lean);
      before = now;
    },
  };
}

/** Widest that a label below a key may be, mm: the keys stand 13 mm apart. */
const LABEL_WIDTH = 12.4;

/** Writes below each key of a keypad what the overlay of a mode says of it. */
export function labelKeys({ engines, profile }: Play, mode: Mode, phrases: Phrases): void {
  const bindings = engines.get(mode)?.bindings ?? [];
  for (const target of document.querySelectorAll<SVGTextElement>('.art:not([hidden]) [data-short]')) {
    const id = target.getAttribute('data-short');
    const labels = PORTS.filter(port => id?.startsWith(`${port} `)).flatMap(port =>
      keyLabelsOf(
        bindings.filter(({ parts }) => parts.some(part => part.id === id)),
        port,
        [profile],
      ),
    );
    setText(target, labels.map(label => labelText(label, phrases)).join(' / '));
    target.removeAttribute('textLength');
    if (target.getComputedTextLength() <= LABEL_WIDTH) continue;
    target.setAttribute('textLength', String(LABEL_WIDTH));
    target.setAttribute('lengthAdjust', 'spacingAndGlyphs');
  }
}

/** Of each kind of art the one with this number. */
function showOnly(name: string, number: number): void {
  for (const each of document.querySelectorAll<HTMLElement>(`[data-${name}]`))
    each.hidden = each.getAttribute(`data-${name}`) !== String(number);
}

/** A stick leans the way its directions are engaged. */
function lean(knob: SVGGElement): void {
  const engaged = [...(knob.parentElement?.querySelectorAll('.part.on') ?? [])].map(
    each => each.getAttribute('data-contact') ?? '',
  );
  const way = (name: string) => (engaged.some(id => id.endsWith(name)) ? 1 : 0);
  const [x, y] = [way(' right') - way(' left'), way(' down') - way(' up')];
  knob.setAttribute('transform', `translate(${x * 3.2} ${y * 3.2})`);
}

/** A knob stands upright in the middle of its way; clockwise is less resistance, so fewer lines. */
function rotate(turns: Element, contact: Play['contacts'][number], level: number): void {
  const degrees = isWheel(contact)
    ? (level * 360) / WHEEL.stepsPerTurn
    : (0.5 - level / PADDLE.linesAtFarEnd) * PADDLE.degrees;
  const [x, y] = [turns.getAttribute('data-x'), turns.getAttribute('data-y')];
  turns.setAttribute('transform', `rotate(${degrees.toFixed(1)} ${x} ${y})`);
}
