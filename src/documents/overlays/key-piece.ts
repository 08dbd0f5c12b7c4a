import type { Element } from 'hast';
import type { Scheme } from '../../language/model.js';
import { label, type Point, ptToMm } from '../figures/drawing.js';
import { breakLines, shorten, textWidth } from '../figures/text-block.js';
import type { Speech } from '../wording/gestures.js';
import { drawKey } from './draw-key.js';
import { SMALLEST_PT } from './fit-label.js';
import { type FittedKey, fitKey, type LabelWords } from './key-cell.js';
import type { KeyCell, KeyOverlay } from './key-view.js';
import { type Marks, signsOf, spokenLabel, wordsOf } from './key-words.js';
import type { Piece } from './piece.js';
import { distinctSigns, fallbackMarks, gestureMarks, type Sign, signLine } from './signs.js';
import { isFromMemory, type Sizes, sizesOf } from './sizes.js';

const COLUMNS = 3;
const ROWS = 4;

/** The key overlays; a sign means the same on all of them. */
export function keyPieces(overlays: readonly KeyOverlay[], scheme: Scheme, speech: Speech): readonly Piece[] {
  const sizes = sizesOf(scheme);
  const fallbacks = fallbackMarks(scheme);
  const set = overlays.map(overlay => ({
    overlay,
    keys: overlay.keys.map(key => {
      const words = key.labels.map(label => wordsOf(label, fallbacks, speech));
      return { key, words, fitted: fitKey(words, sizes) };
    }),
  }));
  const notes = set.flatMap(({ keys }) =>
    keys.flatMap(({ words, fitted }) =>
      words.flatMap(({ note }, index) => (fitted.labels[index]?.note === 'sign' ? [note] : [])),
    ),
  );
  const marks = { gestures: gestureMarks(notes), fallbacks };
  return set.map(each => keyPiece(each, marks, scheme, speech));
}

interface SetOverlay {
  readonly overlay: KeyOverlay;
  readonly keys: readonly SetKey[];
}

interface SetKey {
  readonly key: KeyCell;
  readonly words: readonly LabelWords[];
  readonly fitted: FittedKey;
}

function keyPiece({ overlay, keys }: SetOverlay, marks: Marks, scheme: Scheme, speech: Speech): Piece {
  const { phrases } = speech;
  const sizes = sizesOf(scheme);
  const { mode, seats, port } = overlay;
  const names = [
    { text: scheme.title.value, sizePt: 8.5, bold: true },
    { text: mode.name, sizePt: 8.5, bold: false },
    { text: `${seats.name} · ${phrases.say(`port ${port}`)}`, sizePt: 7.25, bold: false },
  ];
  const signs = distinctSigns(keys.flatMap(({ key, fitted }) => signsOf(key.labels, fitted, marks, speech)));
  const { nodes, left } = nameLines(names, signs, sizes);
  const said = keys
    .filter(({ key }) => key.labels.length > 0)
    .map(({ key: { sign, labels } }) =>
      phrases.say('overlay key', {
        key: sign,
        label: labels.map(label => spokenLabel(label, speech)).join(', '),
      }),
    );
  const drawn = keys.flatMap(({ key, words, fitted }, index) => {
    const told = words.map(({ note }) => ({ words: note, mark: marks.gestures.get(note) ?? '' }));
    return drawKey(key.sign, fitted, told, keyCorner(index, sizes), sizes);
  });
  return {
    kind: 'keys',
    width: sizes['Overlay width'],
    height: sizes['Overlay height'],
    radius: Math.min(sizes['Corner radius'], sizes['Overlay width'] / 2, sizes['Overlay height'] / 2),
    nodes: [...nodes, ...drawn],
    text: phrases.say('overlay text', {
      mode: mode.name,
      seats: seats.name,
      port: phrases.say(`port ${port}`),
      keys: said.join('; '),
    }),
    under: left,
    isFromMemory: isFromMemory(scheme, 'keys'),
    folds: [],
    signs,
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

/** The names, and what the signs mean if there is room for all of it too: the foot of the sheet has it in any case. */
function nameLines(names: readonly NameLine[], signs: readonly Sign[], sizes: Sizes): SetLines {
  const alone = setLines(names, sizes);
  const width = sizes['Overlay width'] - 6;
  const lines = signs.flatMap(sign => breakLines(signLine(sign), width, { sizePt: SMALLEST_PT }));
  const all = setLines([...names, ...lines.map(text => ({ text, sizePt: SMALLEST_PT, bold: false }))], sizes);
  return all.left.length > alone.left.length ? alone : all;
}

interface SetLines {
  readonly nodes: readonly Element[];
  /** What found no room. */
  readonly left: readonly string[];
}

/** Game, mode and port above the keys, then below them, as far as there is room; what is left goes off the piece. */
function setLines(names: readonly NameLine[], sizes: Sizes): SetLines {
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
