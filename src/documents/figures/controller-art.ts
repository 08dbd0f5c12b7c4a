import type { Element } from 'hast';
import type { Controller } from '../../hardware/controllers.js';
import { keySign } from '../wording/controls.js';
import {
  arrowHead,
  box,
  type ControlDrawing,
  circle,
  label,
  line,
  mm,
  type Point,
  path,
  ptToMm,
  type Spot,
  STROKE,
} from './drawing.js';

/** The key under which a drawing keeps the spot of a control. */
export const spotKey = (name: string, seat: string): string => (seat === '' ? name : `${name} ${seat}`);

/**
 * Our own line art for each kind of controller; an own controller is a plain body with its controls.
 *
 * @param scale that it is going to be drawn at: what is lettered on it stays large enough to be read
 */
export function drawController(controller: Controller, scale = 1): ControlDrawing {
  const draw = controller.own ? undefined : ART[controller.name];
  return draw === undefined ? drawOwn(controller) : draw(scale);
}

/** The size at which letters that are `sizePt` large at full scale are drawn, so that 7 pt are left of them. */
const letterSize = (sizePt: number, scale: number): number => Math.max(sizePt, 7.05 / scale);

const ART: Readonly<Record<string, (scale: number) => ControlDrawing>> = {
  joystick: drawJoystick,
  paddles: drawPaddles,
  keypad: drawKeypad,
  wheel: drawWheel,
};

const detail = { width: STROKE.detail } as const;
const polar = (centre: Point, degrees: number, r: number): Point => ({
  x: centre.x + Math.cos((degrees * Math.PI) / 180) * r,
  y: centre.y + Math.sin((degrees * Math.PI) / 180) * r,
});

/** A cable that leaves the body upwards. */
const cable = (x: number, from: number): Element => path(`M${mm(x)} ${mm(from)}V0`, { width: 1.1 });

function drawJoystick(): ControlDrawing {
  const stick = { x: 21, y: 25 };
  const button = { x: 46, y: 33.5 };
  const arrows = [
    ['stick right', 0],
    ['stick down', 90],
    ['stick left', 180],
    ['stick up', 270],
  ] as const;
  const gate = Array.from({ length: 8 }, (_, index) => polar(stick, 22.5 + index * 45, 10.2));
  return {
    width: 58,
    height: 47,
    nodes: [
      cable(29, 5),
      path('M14 5H42Q58 5 58 21V29Q58 47 40 47H16Q0 47 0 29V21Q0 5 14 5Z', { fill: 'paper' }),
      path(
        'M14.5 7.2H41.5Q55.8 7.2 55.8 21.4V28.6Q55.8 44.8 39.6 44.8H16.4Q2.2 44.8 2.2 28.6V21.4Q2.2 7.2 14.5 7.2Z',
        {
          width: STROKE.hair,
        },
      ),
      path(`M${gate.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}Z`, { ...detail, fill: 'tint' }),
      circle(stick, 6.3, { fill: 'paper' }),
      circle(stick, 3.9, detail),
      circle(stick, 0.7, { fill: 'ink', width: STROKE.hair }),
      ...arrows.map(([, angle]) => arrowHead(polar(stick, angle, 15.2), angle, 3.4)),
      circle(button, 5, { fill: 'paper' }),
      circle(button, 3.5, { ...detail, fill: 'tint' }),
    ],
    spots: new Map<string, Spot>([
      ['stick up', { x: 21, y: 10.6, side: 'left' }],
      ['stick left', { x: 6.6, y: 25, side: 'left' }],
      ['stick down', { x: 21, y: 39.4, side: 'left' }],
      ['stick right', { x: 35.4, y: 25, side: 'right' }],
      ['button', { x: 46, y: 33.5, side: 'right' }],
    ]),
  };
}

function drawPaddles(scale: number): ControlDrawing {
  const letters = letterSize(9, scale);
  return {
    width: 68,
    height: 51,
    nodes: [
      path('M17 10C17 3 34 7 34 0', { width: 1.1 }),
      path('M51 10C51 3 34 7 34 0', { width: 1.1 }),
      ...drawPaddle(3, 'A', 'left', letters),
      ...drawPaddle(37, 'B', 'right', letters),
    ],
    spots: new Map<string, Spot>([
      ['paddle A', { x: 17, y: 24, side: 'left' }],
      ['paddle button A', { x: 2.6, y: 40.5, side: 'left' }],
      ['paddle B', { x: 51, y: 24, side: 'right' }],
      ['paddle button B', { x: 65.4, y: 40.5, side: 'right' }],
    ]),
  };
}

/** One of the pair, drawn from `x` to the right; its button is on the outer side. */
function drawPaddle(
  x: number,
  letter: string,
  outside: 'left' | 'right',
  letters: number,
): readonly Element[] {
  const knob = { x: x + 14, y: 26 };
  const ticks = Array.from({ length: 24 }, (_, index) =>
    line(polar(knob, index * 15, 7.7), polar(knob, index * 15, 8.8), { width: STROKE.hair }),
  );
  const start = polar(knob, -205, 11.6);
  const end = polar(knob, 25, 11.6);
  const buttonX = outside === 'left' ? x - 1.6 : x + 26.6;
  return [
    box({ x: buttonX, y: 36 }, 3, 9, 1.4, { fill: 'tint' }),
    path(
      `M${mm(x + 14)} 10C${mm(x + 25)} 10 ${mm(x + 28)} 18 ${mm(x + 28)} 27V42Q${mm(x + 28)} 50 ${mm(x + 20)} 50H${mm(x + 8)}Q${mm(x)} 50 ${mm(x)} 42V27C${mm(x)} 18 ${mm(x + 3)} 10 ${mm(x + 14)} 10Z`,
      { fill: 'paper' },
    ),
    circle(knob, 8.8, { fill: 'tint' }),
    ...ticks,
    circle(knob, 5.6, { ...detail, fill: 'paper' }),
    line(polar(knob, -90, 1.5), polar(knob, -90, 5.6)),
    path(`M${mm(start.x)} ${mm(start.y)}A11.6 11.6 0 0 1 ${mm(end.x)} ${mm(end.y)}`, detail),
    arrowHead(polar(knob, 30, 11.6), 112, 2.6),
    arrowHead(polar(knob, -210, 11.6), 68, 2.6),
    label(
      letter,
      { x: x + 14, y: 42.4 + ptToMm(letters * 0.36) },
      { sizePt: letters, bold: true, anchor: 'middle' },
    ),
  ];
}

const KEY_NAMES = ['1', '2', '3', '4', '5', '6', '7', '8', '9', 'star', '0', 'hash'].map(key => `key ${key}`);

function drawKeypad(scale: number): ControlDrawing {
  const letters = letterSize(10, scale);
  const pitch = { x: 13, y: 11.5 };
  const key = { width: 9.6, height: 6.6 };
  const first = { x: 4.7, y: 13 };
  const keys = KEY_NAMES.map((name, index) => {
    const column = index % 3;
    const row = Math.floor(index / 3);
    const at = { x: first.x + column * pitch.x, y: first.y + row * pitch.y };
    return { name, at, column, row };
  });
  return {
    width: 45,
    height: 61,
    nodes: [
      cable(22.5, 5),
      box({ x: 0, y: 5 }, 45, 56, 5, { fill: 'paper' }),
      box({ x: 2, y: 7 }, 41, 52, 3.4, { width: STROKE.hair }),
      ...keys.flatMap(({ name, at }) => [
        box(at, key.width, key.height, 1.4, { fill: 'tint' }),
        label(
          keySign(name),
          { x: at.x + key.width / 2, y: at.y + key.height / 2 + ptToMm(letters * 0.36) },
          { sizePt: letters, bold: true, anchor: 'middle' },
        ),
      ]),
    ],
    // The leaders of the middle column run below their row, in turn to the left and to the right.
    spots: new Map(
      keys.map(({ name, at, column, row }): [string, Spot] => {
        if (column === 0) return [name, { x: at.x + 0.9, y: at.y + key.height / 2, side: 'left' }];
        if (column === 2)
          return [name, { x: at.x + key.width - 0.9, y: at.y + key.height / 2, side: 'right' }];
        const side = row % 2 === 0 ? 'left' : 'right';
        const bottom = at.y + key.height;
        return [name, { x: at.x + key.width / 2, y: bottom - 0.6, side, lane: bottom + 2.2 }];
      }),
    ),
  };
}

function drawWheel(): ControlDrawing {
  const hub = { x: 27, y: 26 };
  const spokes = [90, 210, 330].flatMap(angle => [
    line(polar(hub, angle - 9, 5), polar(hub, angle - 4, 14.6), detail),
    line(polar(hub, angle + 9, 5), polar(hub, angle + 4, 14.6), detail),
  ]);
  const from = polar(hub, -140, 20.6);
  const to = polar(hub, -40, 20.6);
  return {
    width: 54,
    height: 56,
    nodes: [
      path('M27 9V0', { width: 1.1 }),
      path('M8 36Q4 36 4 40V51Q4 56 9 56H45Q50 56 50 51V40Q50 36 46 36Z', { fill: 'paper' }),
      circle(hub, 18, { fill: 'tint' }),
      circle(hub, 14.6, { ...detail, fill: 'paper' }),
      ...spokes,
      circle(hub, 5, { ...detail, fill: 'paper' }),
      circle(hub, 0.7, { fill: 'ink', width: STROKE.hair }),
      path(`M${mm(from.x)} ${mm(from.y)}A20.6 20.6 0 0 1 ${mm(to.x)} ${mm(to.y)}`, detail),
      arrowHead(polar(hub, -35, 20.6), 60, 2.8),
      arrowHead(polar(hub, -145, 20.6), 120, 2.8),
      circle({ x: 41, y: 49 }, 3.4, { fill: 'paper' }),
      circle({ x: 41, y: 49 }, 2.2, { ...detail, fill: 'tint' }),
    ],
    spots: new Map<string, Spot>([
      ['wheel', { x: 10.7, y: 26, side: 'left' }],
      ['button', { x: 41, y: 49, side: 'right' }],
    ]),
  };
}

/** A plain body with its controls in two columns: what it looks like is its maker's to say. */
function drawOwn(controller: Controller): ControlDrawing {
  const rows = Math.ceil(controller.controls.length / 2);
  const height = 14 + rows * 11;
  const spots = controller.controls.map(({ name, seat }, index) => {
    const isLeft = index < rows;
    const at = { x: isLeft ? 11 : 31, y: 15 + (index % rows) * 11 };
    return { key: spotKey(name, seat), ...at, side: isLeft ? ('left' as const) : ('right' as const) };
  });
  return {
    width: 42,
    height,
    nodes: [
      cable(21, 5),
      box({ x: 0, y: 5 }, 42, height - 5, 7, { fill: 'paper' }),
      box({ x: 2, y: 7 }, 38, height - 9, 5.2, { width: STROKE.hair }),
      ...spots.flatMap(({ x, y }) => [
        circle({ x, y }, 3.9, { fill: 'paper' }),
        circle({ x, y }, 2.7, { ...detail, fill: 'tint' }),
      ]),
    ],
    spots: new Map(spots.map(({ key, x, y, side }): [string, Spot] => [key, { x, y, side }])),
  };
}
