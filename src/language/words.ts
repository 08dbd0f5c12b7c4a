import type { Heading, Paragraph, PhrasingContent, TableCell } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import type { Place, Placed } from '../findings/place.js';
import { alignText, type TextMap } from './align.js';
import { type ParsedPart, placeIn } from './source-text.js';

/**
 * Text as it is read, and where each character of it stands in the file. Markdown's own marks (ticks,
 * emphasis, escapes, entities) are in the file but not in the text:
 *
 *     file   `stick  left` + **button**
 *     text    stick  left  +   button
 */
export interface Words {
  /** Without the white space around it. */
  readonly text: string;
  /** Of `text` in the text of the run, counted from 0. */
  readonly from: number;
  readonly run: Run;
}

/** A whole cell, heading or paragraph. */
interface Run {
  readonly part: ParsedPart;
  readonly text: string;
  readonly pieces: readonly Piece[];
}

interface Piece {
  /** Offset in the run's text at which the piece begins. */
  readonly from: number;
  /** Offset in the part at which its first character stands. */
  readonly at: number;
  /** Null where text and file are alike, character by character. */
  readonly map: TextMap | null;
}

/** The words of a node's children; the node itself begins and ends at offsets in the part. */
export function readWords(parent: WordsNode, part: ParsedPart, inTable: boolean): Words {
  const start = parent.position?.start.offset ?? 0;
  const run: RunBeingFilled = { part, inTable, pieces: [], text: '', end: start };
  addPieces(parent.children, run, parent.position?.end.offset ?? start);
  if (run.pieces.length === 0) run.pieces.push({ from: 0, at: start, map: null });
  return trimmed({ part, text: run.text, pieces: run.pieces }, 0, run.text.length);
}

type WordsNode = Heading | Paragraph | TableCell;

interface RunBeingFilled {
  readonly part: ParsedPart;
  readonly inTable: boolean;
  readonly pieces: Piece[];
  text: string;
  /** Offset in the part at which the last piece ends. */
  end: number;
}

/** @param limit offset in the part before which the nodes end */
function addPieces(nodes: readonly PhrasingContent[], run: RunBeingFilled, limit: number): void {
  for (const [index, node] of nodes.entries()) {
    const { position } = node;
    if ('children' in node && position !== undefined) {
      addPieces(node.children, run, position.end.offset ?? limit);
      run.end = position.end.offset ?? run.end;
    } else {
      const text = node.type === 'break' ? '\n' : textOf(node);
      if (text !== '') addPiece(node, text, run, position?.end.offset ?? nextStart(nodes, index, limit));
    }
  }
}

/** A node without a position (a bare web address) ends before the next that has one. */
function nextStart(nodes: readonly PhrasingContent[], index: number, limit: number): number {
  const next = nodes.slice(index + 1).find(node => node.position !== undefined);
  return next?.position?.start.offset ?? limit;
}

function addPiece(node: PhrasingContent, text: string, run: RunBeingFilled, end: number): void {
  const { source, base } = run.part;
  const start = node.position?.start.offset ?? run.end;
  const from = run.text.length;
  run.text += text;
  run.end = end;
  if (end - start === text.length) {
    run.pieces.push({ from, at: start, map: null });
    return;
  }
  const slice = source.text.slice(base + start, base + end);
  const fence = node.type === 'inlineCode' ? fenceOf(slice) : 0;
  if (fence > 0 && slice.startsWith(text, fence)) {
    run.pieces.push({ from, at: start + fence, map: null });
    return;
  }
  const code = run.inTable ? 'code in a table' : 'code';
  const map = alignText(slice, text, node.type === 'inlineCode' ? code : 'text', fence);
  if (node.position === undefined) run.end = start + (map.ends.at(-1) ?? 0);
  run.pieces.push({ from, at: start, map });
}

/** The length of the ticks before inline code, and of the space after them that is not part of it. */
function fenceOf(source: string): number {
  const ticks = /^`+/.exec(source)?.[0].length ?? 0;
  const inner = source.slice(ticks, source.length - ticks);
  return /^\s.*\S.*\s$/s.test(inner) ? ticks + 1 : ticks;
}

/** The words from one offset of a text to another (exclusive), without white space around them. */
export function sliceWords(words: Words, from: number, to: number = words.text.length): Words {
  return trimmed(words.run, words.from + from, words.from + to);
}

function trimmed(run: Run, from: number, to: number): Words {
  const text = run.text.slice(from, to);
  const start = text.trimStart();
  return { text: start.trimEnd(), from: start === '' ? from : from + text.length - start.length, run };
}

/** The words between separators; parts without words are kept. */
export function splitWords(words: Words, separator: RegExp): readonly Words[] {
  const parts: Words[] = [];
  let from = 0;
  for (const match of words.text.matchAll(separator)) {
    parts.push(sliceWords(words, from, match.index));
    from = match.index + match[0].length;
  }
  if (from === 0) return [words];
  parts.push(sliceWords(words, from));
  return parts;
}

/** Where the words stand: from their first to their last character in the file. */
export function placeOf(words: Words): Place {
  return placeIn(words.run.part, startOf(words), endOf(words));
}

/** From the first character of some words to the last of others, in the same part. */
export function placeFromTo(first: Words, last: Words): Place {
  return placeIn(first.run.part, startOf(first), endOf(last));
}

const startOf = ({ from, run }: Words): number => rangeInPart(run, from)[0];

const endOf = ({ text, from, run }: Words): number =>
  text === '' ? rangeInPart(run, from)[0] : rangeInPart(run, from + text.length - 1)[1];

/** The offsets in the part of one character of the text, the end exclusive. */
function rangeInPart({ pieces }: Run, offset: number): readonly [number, number] {
  let piece = pieces[0];
  for (const candidate of pieces) if (candidate.from <= offset) piece = candidate;
  if (piece === undefined) return [0, 0];
  const index = offset - piece.from;
  if (piece.map === null) return [piece.at + index, piece.at + index + 1];
  const { starts, ends } = piece.map;
  const last = ends.at(-1) ?? 0;
  return [piece.at + (starts[index] ?? last), piece.at + (ends[index] ?? last)];
}

export function placed<T>(value: T, words: Words): Placed<T> {
  return { value, at: placeOf(words) };
}

/** Nothing said: no words, or a dash. */
export function isSilent(words: Words): boolean {
  return words.text === '' || words.text === '—';
}
