import type { Element } from 'hast';
import type { Controller } from '../../hardware/controllers.js';
import type { SeatsFigureView } from '../manual/needs.js';
import { drawController } from './controller-art.js';
import { box, circle, type Drawing, group, label, type Point, path, STROKE } from './drawing.js';
import { shorten } from './text-block.js';

const PORT = { width: 12, height: 5.2 };

/** The back of the console with its two ports, and what is plugged into each. */
export function drawSeating(view: SeatsFigureView, width: number): Drawing {
  const centres = { left: width * 0.26, right: width * 0.74 } as const;
  const consoleBottom = 17;
  const artTop = 27;
  const artHeight = 21;
  return {
    width,
    height: artTop + artHeight + 5,
    nodes: [
      box({ x: 0.3, y: 0.3 }, width - 0.6, consoleBottom, 2.6, { fill: 'tint' }),
      ...(['left', 'right'] as const).flatMap(side => {
        const controller = view[side];
        const at = { x: centres[side], y: consoleBottom - 4.2 };
        const name = side === 'left' ? view.leftLabel : view.rightLabel;
        return [
          label(
            shorten(view.ports[side], width / 2 - 3, { sizePt: 7.5, bold: true }),
            { x: at.x, y: 6 },
            {
              sizePt: 7.5,
              bold: true,
              anchor: 'middle',
            },
          ),
          ...drawPort(at),
          ...(controller === null ? [] : plug(controller, at, artTop, artHeight, width / 2 - 5)),
          label(
            shorten(name, width / 2 - 3, { sizePt: 7.5 }),
            { x: at.x, y: controller === null ? artTop + artHeight / 2 : artTop + artHeight + 3.8 },
            { sizePt: 7.5, anchor: 'middle' },
          ),
        ];
      }),
    ],
  };
}

/** A nine-pin socket: five pins over four. */
export function drawPort(at: Point): readonly Element[] {
  const { width, height } = PORT;
  const top = at.y - height / 2;
  const pins = [5, 4].flatMap((count, row) =>
    Array.from({ length: count }, (_, index) =>
      circle({ x: at.x + (index - (count - 1) / 2) * 1.7, y: top + 1.75 + row * 1.75 }, 0.32, {
        fill: 'ink',
        width: 0.1,
      }),
    ),
  );
  const left = at.x - width / 2;
  return [
    path(
      `M${left + 1} ${top}H${left + width - 1}Q${left + width} ${top} ${left + width - 0.2} ${top + 1}L${left + width - 1} ${top + height - 0.9}Q${left + width - 1.2} ${top + height} ${left + width - 2.2} ${top + height}H${left + 2.2}Q${left + 1.2} ${top + height} ${left + 1} ${top + height - 0.9}L${left + 0.2} ${top + 1}Q${left} ${top} ${left + 1} ${top}Z`,
      { fill: 'paper', width: STROKE.detail },
    ),
    ...pins,
  ];
}

/** The controller in small, its cable drawn to the port. */
function plug(
  controller: Controller,
  port: Point,
  top: number,
  height: number,
  width: number,
): readonly Element[] {
  const art = drawController(controller);
  const scale = Math.min(height / art.height, width / art.width, 0.55);
  const at = { x: port.x - (art.width * scale) / 2, y: top + (height - art.height * scale) / 2 };
  return [
    path(`M${port.x} ${port.y + PORT.height / 2}V${at.y}`, { width: 0.8 }),
    group(drawController(controller, scale).nodes, at, scale),
  ];
}
