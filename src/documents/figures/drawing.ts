import type { Element } from 'hast';
import { s } from 'hastscript';

/** A point in mm, x to the right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Line art in mm: from 0,0 to its width and height. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly Element[];
}

/** Line art of something with controls: where each control is, and on which side its call-out stands best. */
export interface ControlDrawing extends Drawing {
  readonly spots: ReadonlyMap<string, Spot>;
}

export interface Spot extends Point {
  readonly side: 'left' | 'right';
  /** The height at which its leader runs to the edge where other controls are in the way; its own if left out. */
  readonly lane?: number;
}

/** The strokes of the house style, mm. */
export const STROKE = { outline: 0.5, detail: 0.28, hair: 0.18 } as const;

/** A point in mm. */
const PT_MM = 25.4 / 72;

export const ptToMm = (pt: number): number => pt * PT_MM;

/** Numbers to a thousandth of a mm, so that files stay small and alike. */
export const mm = (value: number): string => String(Math.round(value * 1000) / 1000);

interface StrokeStyle {
  readonly width?: number;
  readonly fill?: 'none' | 'paper' | 'tint' | 'ink';
  readonly dash?: string;
}

function style({ width = STROKE.outline, fill = 'none', dash }: StrokeStyle) {
  return {
    class: `stroke ${fill}`,
    strokeWidth: mm(width),
    ...(dash === undefined ? {} : { strokeDasharray: dash }),
  };
}

export function path(d: string, options: StrokeStyle = {}): Element {
  return s('path', { d, ...style(options) });
}

export function line(from: Point, to: Point, options: StrokeStyle = {}): Element {
  return path(`M${mm(from.x)} ${mm(from.y)}L${mm(to.x)} ${mm(to.y)}`, options);
}

export function polyline(points: readonly Point[], options: StrokeStyle = {}): Element {
  return path(`M${points.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}`, options);
}

export function circle(centre: Point, r: number, options: StrokeStyle = {}): Element {
  return s('circle', { cx: mm(centre.x), cy: mm(centre.y), r: mm(r), ...style(options) });
}

export function box(
  at: Point,
  width: number,
  height: number,
  radius: number,
  options: StrokeStyle = {},
): Element {
  return s('rect', {
    x: mm(at.x),
    y: mm(at.y),
    width: mm(width),
    height: mm(height),
    rx: mm(radius),
    ...style(options),
  });
}

export interface LabelStyle {
  readonly sizePt: number;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly inverse?: boolean;
}

/** One line of text; `at` is where its baseline begins, is centred or ends. */
export function label(text: string, at: Point, { sizePt, bold, anchor, inverse }: LabelStyle): Element {
  return s(
    'text',
    {
      x: mm(at.x),
      y: mm(at.y),
      fontSize: mm(ptToMm(sizePt)),
      class: ['label', ...(bold ? ['bold'] : []), ...(inverse ? ['inverse'] : [])],
      ...(anchor === undefined || anchor === 'start' ? {} : { textAnchor: anchor }),
    },
    text,
  );
}

/** A solid arrow head that points along `angle` (degrees, 0 to the right, clockwise); `size` in mm. */
export function arrowHead(tip: Point, angle: number, size: number): Element {
  const turn = (degrees: number, length: number): Point => {
    const radians = ((angle + degrees) * Math.PI) / 180;
    return { x: tip.x + Math.cos(radians) * length, y: tip.y + Math.sin(radians) * length };
  };
  const corners = [tip, turn(150, size), turn(-150, size)];
  return path(`M${corners.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join('L')}Z`, {
    fill: 'ink',
    width: STROKE.hair,
  });
}

/** A number in a disc: white on black, so that it stands out in any print. */
export function badge(number: number, centre: Point): readonly Element[] {
  return [
    circle(centre, 2.05, { fill: 'ink', width: STROKE.hair }),
    label(
      String(number),
      { x: centre.x, y: centre.y + 0.92 },
      {
        sizePt: 7.25,
        bold: true,
        anchor: 'middle',
        inverse: true,
      },
    ),
  ];
}

/** The drawing's parts moved and scaled as one. */
export function group(nodes: readonly Element[], at: Point, scale = 1): Element {
  const move = `translate(${mm(at.x)} ${mm(at.y)})`;
  return s('g', { transform: scale === 1 ? move : `${move} scale(${mm(scale)})` }, ...nodes);
}

/** The drawing as a picture with a text for those who can't see it. One unit is one mm. */
export function picture({ width, height, nodes }: Drawing, text: string): Element {
  return s(
    'svg',
    {
      role: 'img',
      ariaLabel: text,
      class: 'drawing',
      width: `${mm(width)}mm`,
      height: `${mm(height)}mm`,
      viewBox: `0 0 ${mm(width)} ${mm(height)}`,
    },
    ...nodes,
  );
}
