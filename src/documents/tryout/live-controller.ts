import type { Element } from 'hast';
import { s } from 'hastscript';
import { type Contact, controlContact } from '../../gestures/contacts.js';
import type { Controller } from '../../hardware/controllers.js';
import type { Port } from '../../hardware/ports.js';
import { drawController, spotKey } from '../figures/controller-art.js';
import {
  type ControlDrawing,
  circle,
  type Drawing,
  group,
  label,
  line,
  mm,
  type Point,
  STROKE,
} from '../figures/drawing.js';
import { shorten } from '../figures/text-block.js';

/**
 * The line art of a controller with a part to press or to turn on each control. The parts carry the control's
 * contact (`data-contact`); those of a stick stand in a group that can be pushed as one (`data-stick`), what turns
 * tells its centre (`data-x`, `data-y`, mm).
 */
export function drawLiveController(controller: Controller, port: Port): Drawing {
  const art = drawController(controller);
  const contacts = controller.controls.map(control => controlContact(port, controller, control));
  const draw = controller.own ? undefined : PARTS[controller.name];
  const parts = draw === undefined ? ownParts(contacts, art) : draw(contacts, art, port);
  return {
    width: art.width + 2 * MARGIN,
    height: art.height + 2 * MARGIN,
    nodes: [group([...art.nodes, ...parts], { x: MARGIN, y: MARGIN })],
  };
}

/** Room for the strokes, mm. */
const MARGIN = 0.6;

type Parts = (contacts: readonly Contact[], art: ControlDrawing, port: Port) => readonly Element[];

const PARTS: Readonly<Record<string, Parts>> = {
  joystick: joystickParts,
  paddles: paddleParts,
  wheel: wheelParts,
  keypad: keypadParts,
};

const controlName = (contact: Contact): string => (contact.kind === 'control' ? contact.control.name : '');
const seatOf = (contact: Contact): string => (contact.kind === 'control' ? contact.control.seat : '');

/** Something that lights up while its contact is engaged. */
const part = (shape: Element, { id }: Contact): Element => ({
  ...shape,
  properties: { className: ['part'], ...shape.properties, dataContact: id },
});

const round = (centre: Point, r: number): Element =>
  s('circle', { cx: mm(centre.x), cy: mm(centre.y), r: mm(r) });

const polar = (centre: Point, degrees: number, r: number): Point => ({
  x: centre.x + Math.cos((degrees * Math.PI) / 180) * r,
  y: centre.y + Math.sin((degrees * Math.PI) / 180) * r,
});

const STICK: Point = { x: 21, y: 25 };
const STICK_ANGLES: Readonly<Record<string, number>> = {
  'stick right': 0,
  'stick down': 90,
  'stick left': 180,
  'stick up': 270,
};
/** The ring in which the directions lie, mm. */
const RING = { from: 10.6, to: 18.4 } as const;

function joystickParts(contacts: readonly Contact[], _: ControlDrawing, port: Port): readonly Element[] {
  const directions = contacts.flatMap(contact => {
    const angle = STICK_ANGLES[controlName(contact)];
    return angle === undefined ? [] : [part(sector(angle), contact)];
  });
  const button = contacts.find(contact => controlName(contact) === 'button');
  const knob = s('g', { className: ['knob'] }, [
    circle(STICK, 6.3, { fill: 'paper' }),
    circle(STICK, 3.9, { width: STROKE.detail }),
    circle(STICK, 0.7, { fill: 'ink', width: STROKE.hair }),
  ]);
  const stick = { className: ['stick'], dataStick: port, dataX: mm(STICK.x), dataY: mm(STICK.y) };
  return [
    s('g', stick, [
      s('circle', { className: ['reach'], cx: mm(STICK.x), cy: mm(STICK.y), r: mm(RING.to) }),
      ...directions,
      s('circle', { className: ['tint', 'well'], cx: mm(STICK.x), cy: mm(STICK.y), r: '6.7' }),
      knob,
    ]),
    ...(button === undefined ? [] : [part(round({ x: 46, y: 33.5 }, 5.2), button)]),
  ];
}

/** A quarter of the ring around `angle`. */
function sector(angle: number): Element {
  const half = 41;
  const at = (degrees: number, r: number) => {
    const { x, y } = polar(STICK, degrees, r);
    return `${mm(x)} ${mm(y)}`;
  };
  const [from, to] = [angle - half, angle + half];
  const outer = `A${RING.to} ${RING.to} 0 0 1 ${at(to, RING.to)}`;
  const inner = `A${RING.from} ${RING.from} 0 0 0 ${at(from, RING.from)}`;
  return s('path', { d: `M${at(from, RING.to)}${outer}L${at(to, RING.from)}${inner}Z` });
}

/** What turns: a group that is rotated about its centre. */
const turning = (contact: Contact, centre: Point, nodes: readonly Element[]): Element =>
  s('g', { className: ['turns'], dataContact: contact.id, dataX: mm(centre.x), dataY: mm(centre.y) }, [
    ...nodes,
  ]);

function paddleParts(contacts: readonly Contact[]): readonly Element[] {
  return contacts.map(contact => {
    const isA = seatOf(contact) === 'A';
    if (controlName(contact) === 'paddle button') {
      const x = isA ? 1.4 : 63.6;
      return part(s('rect', { x: mm(x - 1), y: '35', width: '5', height: '11', rx: '2' }), contact);
    }
    const knob = { x: isA ? 17 : 51, y: 26 };
    return turning(contact, knob, [
      circle(knob, 5.6, { fill: 'paper', width: STROKE.detail }),
      line(polar(knob, -90, 1.5), polar(knob, -90, 5.6)),
      s('circle', { className: ['reach'], cx: mm(knob.x), cy: mm(knob.y), r: '12' }),
    ]);
  });
}

function wheelParts(contacts: readonly Contact[]): readonly Element[] {
  const hub = { x: 27, y: 26 };
  return contacts.map(contact => {
    if (controlName(contact) === 'button') return part(round({ x: 41, y: 49 }, 3.8), contact);
    const spokes = [90, 210, 330].flatMap(angle => [
      line(polar(hub, angle - 9, 5), polar(hub, angle - 4, 14.6), { width: STROKE.detail }),
      line(polar(hub, angle + 9, 5), polar(hub, angle + 4, 14.6), { width: STROKE.detail }),
    ]);
    return turning(contact, hub, [
      circle(hub, 18, { fill: 'tint' }),
      circle(hub, 14.6, { fill: 'paper', width: STROKE.detail }),
      ...spokes,
      circle(hub, 5, { fill: 'paper', width: STROKE.detail }),
      circle(polar(hub, -90, 16.3), 0.8, { fill: 'ink', width: STROKE.hair }),
    ]);
  });
}

/** Below each key stands what the overlay says of it; the program writes it. */
function keypadParts(contacts: readonly Contact[]): readonly Element[] {
  return contacts.flatMap((contact, index) => {
    const [x, y] = [4.7 + (index % 3) * 13, 13 + Math.floor(index / 3) * 11.5];
    const label = s('text', {
      className: ['label', 'short'],
      x: mm(x + 4.8),
      y: mm(y + 9.3),
      dataShort: contact.id,
    });
    return [label, part(s('rect', { x: mm(x), y: mm(y), width: '9.6', height: '6.6', rx: '1.4' }), contact)];
  });
}

/** An own controller's controls bear their names: nobody knows what it looks like. */
function ownParts(contacts: readonly Contact[], art: ControlDrawing): readonly Element[] {
  return contacts.flatMap(contact => {
    const spot = art.spots.get(spotKey(controlName(contact), seatOf(contact)));
    if (spot === undefined) return [];
    const text = shorten(controlName(contact), 18, { sizePt: 6 });
    return [
      label(text, { x: spot.x, y: spot.y + 6.4 }, { sizePt: 6, anchor: 'middle' }),
      part(round(spot, 4.3), contact),
    ];
  });
}
