import type { RootContent } from 'mdast';
import type { Place, Point, Range } from '../findings/place.js';

/** A file ready for finding places in it. */
export interface SourceText {
  readonly path: string;
  /** As given, byte order mark included. */
  readonly text: string;
  /** Offsets at which lines begin, in order; the first line begins after a byte order mark. */
  readonly lineStarts: readonly number[];
}

/** A part of a file that was parsed by itself: what stands in it counts its offsets from `base`. */
export interface ParsedPart {
  readonly source: SourceText;
  /** Offset in the file, from 0. */
  readonly base: number;
}

/** A part with its content, whose offsets count in it. */
export interface ParsedContent {
  readonly part: ParsedPart;
  readonly content: readonly RootContent[];
}

/** Parses a part of a file that begins at `base` (an offset). */
export type ParsePart = (source: SourceText, base: number, text: string) => ParsedContent;

/** A part that is kept for the next reading: it is moved to where it stands then, and all places in it with it. */
export type MovingPart = { -readonly [Key in keyof ParsedPart]: ParsedPart[Key] };

const BYTE_ORDER_MARK = 0xfeff;
const LINE_END = /\r\n|\n|\r/g;

export function createSourceText(path: string, text: string): SourceText {
  const lineStarts = [text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0];
  for (const match of text.matchAll(LINE_END)) lineStarts.push(match.index + match[0].length);
  return { path, text, lineStarts };
}

/** Index from 0 of the line that holds an offset. */
export function lineAt(source: SourceText, offset: number): number {
  let low = 0;
  let high = source.lineStarts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((source.lineStarts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** @param start offset in the file, from 0; `end` is exclusive */
export function placeBetween(source: SourceText, start: number, end: number): Place {
  return { file: source.path, range: { start: pointAt(source, start), end: pointAt(source, end) } };
}

/**
 * A place that goes along with its part, worked out when it is asked for.
 *
 * @param start offset in the part, from 0; `end` is exclusive
 */
export function placeIn(part: ParsedPart, start: number, end: number): Place {
  return new PlaceInPart(part, start, end);
}

/** A class, since a scheme has tens of thousands: objects with getters of their own are slow to make. */
class PlaceInPart implements Place {
  readonly #part: ParsedPart;
  readonly #start: number;
  readonly #end: number;

  constructor(part: ParsedPart, start: number, end: number) {
    this.#part = part;
    this.#start = start;
    this.#end = end;
  }

  get file(): string {
    return this.#part.source.path;
  }

  get range(): Range {
    const { source, base } = this.#part;
    return placeBetween(source, base + this.#start, base + this.#end).range;
  }
}

function pointAt(source: SourceText, offset: number): Point {
  const line = lineAt(source, offset);
  return { line: line + 1, column: offset - (source.lineStarts[line] ?? 0) + 1, offset };
}
