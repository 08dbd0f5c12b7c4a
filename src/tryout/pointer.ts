import { contactType } from '../gestures/contacts.js';
import type { Desk } from './desk.js';

/** Whose page it is now: everything that listens asks again each time. */
export interface Current {
  desk(): Desk;
  /** Playing time, ms. */
  now(): number;
}

/** A push of the stick that is shorter than this counts for nothing, as a part of its reach. */
const DEAD_ZONE = 0.28;
/** Below this part of the push the other way does not count: an eighth of a turn for each of eight ways. */
const DIAGONAL = Math.sin(Math.PI / 8);

/** Mouse, pen and fingers: on the drawings and on the buttons below them, each pointer by itself. */
export function listenToPointers(current: Current): void {
  const grips = new Map<number, Grip>();
  document.addEventListener('pointerdown', event => {
    const grip = event.button === 0 ? gripAt(event, current) : null;
    if (grip === null) return;
    event.preventDefault();
    grips.set(event.pointerId, grip);
    grip.move(event);
  });
  document.addEventListener('pointermove', event => grips.get(event.pointerId)?.move(event));
  for (const type of ['pointerup', 'pointercancel'] as const) {
    document.addEventListener(type, event => {
      grips.get(event.pointerId)?.end();
      grips.delete(event.pointerId);
    });
  }
  document.addEventListener('contextmenu', event => {
    if (grips.size > 0) event.preventDefault();
  });
}

/** What one pointer holds. */
interface Grip {
  move(event: PointerEvent): void;
  end(): void;
}

function gripAt(event: PointerEvent, current: Current): Grip | null {
  if (!(event.target instanceof Element)) return null;
  const source = `pointer ${event.pointerId}`;
  const stick = event.target.closest('[data-stick]');
  if (stick instanceof SVGGElement) return stickGrip(stick, source, current);
  const worked = event.target.closest('[data-contact]');
  const id = worked?.getAttribute('data-contact') ?? null;
  const { hands, play } = current.desk();
  const contact = play.contacts.find(each => each.id === id);
  if (worked === null || contact === undefined) return null;
  switch (contactType(contact)) {
    case 'momentary':
      hands.press(contact, source, current.now());
      return { move() {}, end: () => hands.release(contact, source, current.now()) };
    case 'two-position':
      hands.flip(contact);
      return null;
    case 'turning': {
      const way = Number(worked.getAttribute('data-way') ?? 0);
      if (!(worked instanceof SVGGElement)) {
        hands.keepTurning(contact, way, source);
        return { move() {}, end: () => hands.letGo(current.now(), source) };
      }
      return turnGrip(worked, event, degrees => hands.turn(contact, degrees));
    }
    default:
      return null;
  }
}

/** Where a pointer is from a drawing’s centre, mm of the drawing, y downwards. */
function fromCentre(drawing: SVGGElement, event: PointerEvent): { readonly x: number; readonly y: number } {
  const parent = drawing.parentElement instanceof SVGGraphicsElement ? drawing.parentElement : null;
  const matrix = parent?.getScreenCTM()?.inverse();
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
  const centre = (name: string) => Number(drawing.getAttribute(`data-${name}`));
  return { x: at.x - centre('x'), y: at.y - centre('y') };
}

/** The stick is pushed one of eight ways. */
function stickGrip(stick: SVGGElement, source: string, current: Current): Grip {
  const { hands, play } = current.desk();
  const port = stick.getAttribute('data-stick');
  const reach = Number(stick.querySelector('.reach')?.getAttribute('r'));
  return {
    move(event) {
      const { x, y } = fromCentre(stick, event);
      const length = Math.hypot(x, y);
      const isFar = length > reach * DEAD_ZONE;
      const ways = { left: -x, right: x, up: -y, down: y };
      for (const [way, push] of Object.entries(ways)) {
        const contact = play.contacts.find(({ id }) => id === `${port} stick ${way}`);
        if (contact === undefined) continue;
        if (isFar && push / length > DIAGONAL) hands.press(contact, source, current.now());
        else hands.release(contact, source, current.now());
      }
    },
    end: () => hands.letGo(current.now(), source),
  };
}

/** A knob follows the pointer round its centre. */
function turnGrip(turns: SVGGElement, first: PointerEvent, turn: (degrees: number) => void): Grip {
  const angleOf = (event: PointerEvent) => {
    const { x, y } = fromCentre(turns, event);
    return (Math.atan2(y, x) * 180) / Math.PI;
  };
  let before = angleOf(first);
  return {
    move(event) {
      const angle = angleOf(event);
      turn(((angle - before + 540) % 360) - 180);
      before = angle;
    },
    end() {},
  };
}
