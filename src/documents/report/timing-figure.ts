import type { Element } from 'hast';
import { s } from 'hastscript';
import { measureText } from '../page/measure.js';
import { breakLines } from './break-lines.js';
import type { TimingColumn, TimingTrack, TimingView } from './timing-view.js';

/** Sizes in units of the drawing: tenths of a millimetre on paper. */
const WIDTH = 1800;
const LABEL_WIDTH = 420;
const SINGLE = 100;
const FOLDED = 330;
const HEAD = 95;
const TRACK = 92;
const LINE_HEIGHT = 32;
const HIGH = 24;
const LOW = 68;
const PT_PER_UNIT = 72 / 254;
const LABEL_PT = 7.5;

/** A column with its place in the drawing. */
interface Slot {
  readonly column: TimingColumn;
  readonly index: number;
  readonly x: number;
  readonly width: number;
}

/** The timing diagram; more than one where the time is too long for the width. */
export function timingFigures(view: TimingView): readonly Element[] {
  const rows = splitRows(view.columns);
  return rows.map((slots, index) => drawRow(view, slots, index === 0 ? view.inWords : 'Continued.'));
}

const widthOf = ({ reads }: TimingColumn): number => (reads === 1 ? SINGLE : FOLDED);

function splitRows(columns: readonly TimingColumn[]): readonly (readonly Slot[])[] {
  const rows: Slot[][] = [[]];
  let x = LABEL_WIDTH;
  for (const [index, column] of columns.entries()) {
    const width = widthOf(column);
    if (x + width > WIDTH) {
      rows.push([]);
      x = LABEL_WIDTH;
    }
    rows.at(-1)?.push({ column, index, x, width });
    x += width;
  }
  return rows;
}

interface PlacedTrack {
  readonly track: TimingTrack;
  readonly lines: readonly string[];
  readonly y: number;
  readonly height: number;
}

function placeTracks(tracks: readonly TimingTrack[]): readonly PlacedTrack[] {
  let y = HEAD;
  return tracks.map(track => {
    const lines = breakLines(
      track.name,
      LABEL_WIDTH - 40,
      text =>
        measureText(text, { weight: track.kind === 'action' ? 700 : 400, sizePt: LABEL_PT }) / PT_PER_UNIT,
    );
    const height = Math.max(TRACK, lines.length * LINE_HEIGHT + 28);
    const placed = { track, lines, y, height };
    y += height;
    return placed;
  });
}

function drawRow(view: TimingView, slots: readonly Slot[], words: string): Element {
  const tracks = placeTracks(view.tracks);
  const bottom = tracks.reduce((end, { y, height }) => Math.max(end, y + height), HEAD);
  const end = slots.reduce((right, { x, width }) => Math.max(right, x + width), LABEL_WIDTH);
  return s(
    'svg',
    { class: 'timing', viewBox: `0 0 ${WIDTH} ${bottom + 8}`, role: 'img', 'aria-label': words },
    [
      ...drawHead(slots, bottom),
      ...tracks.map(track => drawTrack(track, slots, end)),
      ...slots.filter(({ column }) => column.reads > 1).map(slot => drawFold(slot, bottom)),
    ],
  );
}

function drawHead(slots: readonly Slot[], bottom: number): readonly Element[] {
  return [
    s('text', { class: 'axis name', x: LABEL_WIDTH - 40, y: 42 }, 'read'),
    s('text', { class: 'axis name', x: LABEL_WIDTH - 40, y: 78 }, 'ms'),
    ...slots.flatMap(({ column, x, width }) => [
      s('line', { class: 'grid', x1: x, x2: x, y1: HEAD - 8, y2: bottom }),
      s(
        'text',
        { class: 'axis', x: column.reads === 1 ? x + width / 2 : x + SINGLE / 2, y: 42 },
        String(column.first),
      ),
      s(
        'text',
        { class: 'axis', x: column.reads === 1 ? x + width / 2 : x + SINGLE / 2, y: 78 },
        column.startMs.toFixed(0),
      ),
    ]),
  ];
}

function drawTrack({ track, lines, y, height }: PlacedTrack, slots: readonly Slot[], end: number): Element {
  const textY = y + height / 2 - ((lines.length - 1) * LINE_HEIGHT) / 2 + 10;
  const top = y + (height - TRACK) / 2;
  return s('g', { class: track.kind }, [
    s('line', { class: 'row', x1: 0, x2: end, y1: y, y2: y }),
    ...lines.map((line, index) => s('text', { class: 'label', x: 0, y: textY + index * LINE_HEIGHT }, line)),
    ...(track.kind === 'control' ? drawWave(track, slots, top, end) : drawMarks(track, slots, top)),
  ]);
}

/** High while engaged, low while not, with upright edges; before the first read everything is at rest. */
function drawWave(track: TimingTrack, slots: readonly Slot[], top: number, end: number): readonly Element[] {
  const [first] = slots;
  if (first === undefined) return [];
  const yAt = (index: number) => top + (track.on[index] === true ? HIGH : LOW);
  const path = slots.map(
    ({ index, x }, place) =>
      `${place === 0 ? `M${x} ${index === 0 ? top + LOW : yAt(index)} V${yAt(index)}` : `H${x} V${yAt(index)}`}`,
  );
  const filled = slots.filter(({ index }) => track.on[index] === true);
  return [
    ...filled.map(({ x, width }) =>
      s('rect', { class: 'high', x, y: top + HIGH, width, height: LOW - HIGH }),
    ),
    s('path', { class: 'wave', d: `${path.join(' ')} H${end}` }),
  ];
}

/** A diamond at a read at which the action fires; a row of them where it fires at every read of a run. */
function drawMarks(track: TimingTrack, slots: readonly Slot[], top: number): readonly Element[] {
  const middle = top + TRACK / 2;
  return slots.flatMap(({ index, x, width, column }) => {
    if (track.on[index] !== true) return [];
    const places = column.reads === 1 ? [x + width / 2] : [x + SINGLE / 2, x + width - SINGLE / 2];
    const bar =
      column.reads === 1
        ? []
        : [s('line', { class: 'each', x1: places[0] ?? x, x2: places.at(-1) ?? x, y1: middle, y2: middle })];
    return [
      ...bar,
      ...places.map(at => s('path', { class: 'mark', d: `M${at} ${middle - 28} l26 28 l-26 28 l-26 -28 Z` })),
    ];
  });
}

/** A gap through all tracks, and above it how long nothing changes. */
function drawFold({ x, width, column }: Slot, bottom: number): Element {
  const centre = x + width / 2;
  const slant = 10;
  const edge = (at: number) => `M${at + slant} ${HEAD - 8} L${at - slant} ${bottom}`;
  return s('g', { class: 'fold' }, [
    s('path', {
      class: 'gap',
      d: `M${centre - 12 + slant} ${HEAD - 8} H${centre + 12 + slant} L${centre + 12 - slant} ${bottom} H${centre - 12 - slant} Z`,
    }),
    s('path', { class: 'edge', d: `${edge(centre - 12)} ${edge(centre + 12)}` }),
    s('text', { class: 'length', x: x + width - 8, y: 42 }, column.label),
  ]);
}
