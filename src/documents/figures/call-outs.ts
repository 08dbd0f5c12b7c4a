import type { Element } from 'hast';
import {
  type ControlDrawing,
  circle,
  type Drawing,
  group,
  label,
  type Point,
  polyline,
  ptToMm,
  type Spot,
  STROKE,
} from './drawing.js';
import { placeInOrder } from './placement.js';
import { breakLines, textWidth } from './text-block.js';

/** A call-out: a head, lines under it, and the spots it points at (keys of the drawing's `spots`). */
export interface Call {
  readonly spots: readonly string[];
  readonly head: string;
  readonly lines: readonly string[];
}

export interface CallOutOptions {
  /** Width of the whole figure, mm. */
  readonly width: number;
  /** How much the art is drawn smaller or larger. */
  readonly scale: number;
}

const HEAD = { sizePt: 8, bold: true } as const;
const BODY = { sizePt: 7.75 } as const;
const LEADING = 1.26;
const GAP = 2.2;
/** Between the art and the text, mm: the leaders fan out here. */
const GUTTER = 7;

interface Block {
  readonly call: Call;
  readonly anchor: Spot;
  readonly head: readonly string[];
  readonly body: readonly string[];
  readonly height: number;
}

/** The art in the middle, call-outs beside it: none overlaps, no two leaders cross, top to bottom as in the art. */
export function drawCallOuts(art: ControlDrawing, calls: readonly Call[], options: CallOutOptions): Drawing {
  const { width, scale } = options;
  const sides = (['left', 'right'] as const).filter(side =>
    calls.some(call => anchorOf(call, art)?.side === side),
  );
  const artWidth = art.width * scale;
  const column = (width - artWidth - GUTTER * sides.length) / Math.max(1, sides.length);
  const artLeft = sides.includes('left') ? column + GUTTER : sides.length === 0 ? (width - artWidth) / 2 : 0;
  const columns = sides.map(side => ({ side, blocks: layOut(calls, art, side, column) }));
  const tops = columns.map(({ blocks }) =>
    placeInOrder(
      blocks.map(({ anchor, height }) => ({ centre: laneOf(anchor) * scale, height })),
      GAP,
    ),
  );
  const highest = Math.min(0, ...tops.map(([first]) => first ?? 0));
  const lowest = Math.max(
    art.height * scale,
    ...columns.map(({ blocks }, index) => bottomOf(blocks, tops[index])),
  );
  const nodes = columns.flatMap(({ side, blocks }, index) =>
    blocks.flatMap((block, at) => {
      const top = (tops[index]?.[at] ?? 0) - highest;
      const x = side === 'left' ? 0 : artLeft + artWidth + GUTTER;
      return [
        ...drawText(block, { x, y: top }, side, column),
        ...drawLeader(block, art, { x: artLeft, y: -highest }, scale, { top, x, column, side, artWidth }),
      ];
    }),
  );
  return {
    width,
    height: lowest - highest + 0.6,
    nodes: [group(art.nodes, { x: artLeft, y: -highest + 0.3 }, scale), group(nodes, { x: 0, y: 0.3 })],
  };
}

const laneOf = ({ lane, y }: Spot): number => lane ?? y;

const anchorOf = (call: Call, art: ControlDrawing): Spot | undefined =>
  call.spots.flatMap(key => art.spots.get(key) ?? [])[0];

function bottomOf(blocks: readonly Block[], tops: readonly number[] | undefined): number {
  return (tops?.at(-1) ?? 0) + (blocks.at(-1)?.height ?? 0);
}

/** The call-outs of one side, by the height of what they point at. */
function layOut(
  calls: readonly Call[],
  art: ControlDrawing,
  side: 'left' | 'right',
  column: number,
): readonly Block[] {
  return calls
    .flatMap((call): Block[] => {
      const anchor = anchorOf(call, art);
      if (anchor?.side !== side) return [];
      const head = breakLines(call.head, column, HEAD);
      const body = call.lines.flatMap(text => breakLines(text, column, BODY));
      const height = (head.length * HEAD.sizePt + body.length * BODY.sizePt) * LEADING;
      return [{ call, anchor, head, body, height: ptToMm(height) }];
    })
    .toSorted((a, b) => laneOf(a.anchor) - laneOf(b.anchor));
}

function drawText(block: Block, at: Point, side: 'left' | 'right', column: number): readonly Element[] {
  const anchor = side === 'left' ? 'end' : 'start';
  const x = side === 'left' ? at.x + column : at.x;
  let y = at.y;
  const lineOf = (text: string, setting: typeof HEAD | typeof BODY): Element => {
    y += ptToMm(setting.sizePt * LEADING);
    const bold = 'bold' in setting;
    return label(text, { x, y: y - ptToMm(setting.sizePt * 0.3) }, { sizePt: setting.sizePt, bold, anchor });
  };
  return [...block.head.map(text => lineOf(text, HEAD)), ...block.body.map(text => lineOf(text, BODY))];
}

interface LeaderSpace {
  readonly top: number;
  readonly x: number;
  readonly column: number;
  readonly side: 'left' | 'right';
  readonly artWidth: number;
}

/** From a dot on the control along its lane to the edge of the art, then through the gutter to the head of the text. */
function drawLeader(
  block: Block,
  art: ControlDrawing,
  origin: Point,
  scale: number,
  { top, x, column, side, artWidth }: LeaderSpace,
): readonly Element[] {
  const place = ({ x: px, y: py }: Point): Point => ({ x: origin.x + px * scale, y: origin.y + py * scale });
  const spots = block.call.spots.flatMap(key => art.spots.get(key) ?? []).map(place);
  const from = place(block.anchor);
  const isLeft = side === 'left';
  const headY = top + ptToMm(HEAD.sizePt * LEADING * 0.58);
  const lane = { x: from.x, y: origin.y + laneOf(block.anchor) * scale };
  const edge = { x: isLeft ? origin.x - 1.2 : origin.x + artWidth + 1.2, y: lane.y };
  const text = isLeft ? { x: x + column + 1, y: headY } : { x: x - 1, y: headY };
  const near = { x: isLeft ? text.x + 0.8 : text.x - 0.8, y: headY };
  const detail = { width: STROKE.hair };
  return [
    polyline([from, ...(lane.y === from.y ? [] : [lane]), edge, near, text], detail),
    ...spots.map(spot => circle(spot, 0.55, { fill: 'ink', width: STROKE.hair })),
  ];
}

/** The width that the longest word of the calls needs, mm: a column narrower than that breaks words. */
export function longestWord(calls: readonly Call[]): number {
  const words = (text: string) => text.split(/\s+/);
  return Math.max(
    0,
    ...calls.flatMap(({ head, lines }) => [
      ...words(head).map(word => textWidth(word, HEAD)),
      ...lines.flatMap(words).map(word => textWidth(word, BODY)),
    ]),
  );
}
