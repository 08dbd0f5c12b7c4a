import type { Element } from 'hast';
import type { Scheme } from '../../language/model.js';
import { box, label, line, type Point, ptToMm, STROKE } from '../figures/drawing.js';
import { shorten, textWidth } from '../figures/text-block.js';
import type { Speech } from '../wording/gestures.js';
import { LABEL_LEADING } from './fit-label.js';
import { fitKey, SIGN_HEIGHT } from './key-cell.js';
import type { KeyCell, KeyOverlay } from './key-view.js';
import type { Piece } from './piece.js';
import { isFromMemory, type Sizes, sizesOf } from './sizes.js';

const COLUMNS = 3;
const ROWS = 4;

export function keyPiece(overlay: KeyOverlay, scheme: Scheme, { phrases }: Speech): Piece {
  const sizes = sizesOf(scheme);
  const { mode, seats, port, keys } = overlay;
  const names = [
    { text: scheme.title.value, sizePt: 8.5, bold: true },
    { text: mode.name, sizePt: 8.5, bold: false },
    { text: `${seats.name} · ${phrases.say(`port ${port}`)}`, sizePt: 7.25, bold: false },
  ];
  const { nodes, left } = nameLines(names, sizes);
  const said = keys
    .filter(({ labels }) => labels.length > 0)
    .map(({ sign, labels }) =>
      phrases.say('overlay key', { key: sign, label: labels.map(({ text }) => text).join(', ') }),
    );
  return {
    kind: 'keys',
    width: sizes['Overlay width'],
    height: sizes['Overlay height'],
    radius: Math.min(sizes['Corner radius'], sizes['Overlay width'] / 2, sizes['Overlay height'] / 2),
    nodes: [...nodes, ...keys.flatMap((key, index) => drawKey(key, keyCorner(index, sizes), sizes))],
    text: phrases.say('overlay text', {
      mode: mode.name,
      seats: seats.name,
      port: phrases.say(`port ${port}`),
      keys: said.join('; '),
    }),
    under: left,
    isFromMemory: isFromMemory(scheme, 'keys'),
    folds: [],
  };
}

/** Upper left corner of a key, counted from 0 row by row; mm from the piece's corner. */
export function keyCorner(index: number, sizes: Sizes): Point {
  return {
    x: sizes['First key from left'] + (index % COLUMNS) * sizes['Key column pitch'],
    y: sizes['First key from top'] + Math.floor(index / COLUMNS) * sizes['Key row pitch'],
  };
}

interface NameLine {
  readonly text: string;
  readonly sizePt: number;
  readonly bold: boolean;
}

/** Game, mode and port above the keys, then below them, as far as there is room; what is left goes off the piece. */
function nameLines(
  names: readonly NameLine[],
  sizes: Sizes,
): { readonly nodes: readonly Element[]; readonly left: readonly string[] } {
  const keysEnd = sizes['First key from top'] + (ROWS - 1) * sizes['Key row pitch'] + sizes['Key height'];
  const bands = [
    { top: 0, bottom: sizes['First key from top'] },
    { top: keysEnd, bottom: sizes['Overlay height'] },
  ];
  const width = sizes['Overlay width'] - 6;
  const nodes: Element[] = [];
  let rest = names;
  for (const { top, bottom } of bands) {
    const room = bottom - top - 2.4;
    const count = fittingCount(rest, room);
    const own = rest.slice(0, count);
    rest = rest.slice(count);
    const height = own.reduce((sum, { sizePt }) => sum + ptToMm(sizePt * 1.25), 0);
    let y = top + (bottom - top - height) / 2;
    for (const { text, sizePt, bold } of own) {
      y += ptToMm(sizePt * 1.25);
      const fitted = fitLine(text, width, sizePt, bold);
      const at = { x: sizes['Overlay width'] / 2, y: y - ptToMm(fitted.sizePt * 0.33) };
      nodes.push(label(fitted.text, at, { sizePt: fitted.sizePt, bold, anchor: 'middle' }));
    }
  }
  return { nodes, left: rest.map(({ text }) => text) };
}

function fittingCount(names: readonly NameLine[], room: number): number {
  let used = 0;
  const at = names.findIndex(({ sizePt }) => {
    used += ptToMm(sizePt * 1.25);
    return used > room;
  });
  return at < 0 ? names.length : at;
}

/** Smaller down to 7 pt, then cut short. */
function fitLine(text: string, width: number, sizePt: number, bold: boolean) {
  for (let size = sizePt; size >= 7; size -= 0.25) {
    if (textWidth(text, { sizePt: size, bold }) <= width) return { text, sizePt: size };
  }
  return { text: shorten(text, width, { sizePt: 7, bold }), sizePt: 7 };
}

function drawKey(key: KeyCell, at: Point, sizes: Sizes): readonly Element[] {
  const width = sizes['Key width'];
  const height = sizes['Key height'];
  const cell = box(at, width, height, Math.min(1.2, width / 4, height / 4), {
    fill: 'paper',
    width: STROKE.detail,
  });
  if (key.labels.length === 0) return [cell, ...cross(at, width, height)];
  const { labels, hasSign } = fitKey(key, sizes);
  const top = hasSign ? SIGN_HEIGHT : 0.5;
  const share = (height - top - 0.5) / labels.length;
  const sign = label(key.sign, { x: at.x + 1, y: at.y + 2.75 }, { sizePt: 7 });
  return [
    cell,
    ...(hasSign ? [sign] : []),
    ...labels.flatMap(({ lines, sizePt }, index) => {
      const pitch = ptToMm(sizePt * LABEL_LEADING);
      const first = at.y + top + share * index + (share - pitch * lines.length) / 2;
      return lines.map((text, number) =>
        label(
          text,
          { x: at.x + width / 2, y: first + pitch * number + ptToMm(sizePt * 0.86) },
          {
            sizePt,
            bold: true,
            anchor: 'middle',
          },
        ),
      );
    }),
    ...labels.slice(1).map((_, index) => {
      const y = at.y + top + share * (index + 1);
      return line({ x: at.x + 1.5, y }, { x: at.x + width - 1.5, y }, { width: STROKE.hair });
    }),
  ];
}

/** An unused key is crossed out. */
function cross({ x, y }: Point, width: number, height: number): readonly Element[] {
  const inset = 0.8;
  return [
    line(
      { x: x + inset, y: y + inset },
      { x: x + width - inset, y: y + height - inset },
      { width: STROKE.hair },
    ),
    line(
      { x: x + width - inset, y: y + inset },
      { x: x + inset, y: y + height - inset },
      { width: STROKE.hair },
    ),
  ];
}
