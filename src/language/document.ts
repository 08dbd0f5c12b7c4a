import type { RootContent } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import type { Place, SourceFile } from '../findings/place.js';
import { cutParts } from './cut.js';
import {
  createSourceText,
  lineAt,
  type ParsedPart,
  type ParsePart,
  placeIn,
  type SourceText,
} from './source-text.js';

/** A piece of content at the top level of the document: a heading, a table, a list, a paragraph … */
export interface Block {
  /** Its offsets count from the part's base. */
  readonly node: RootContent;
  readonly part: ParsedPart;
}

export interface Document {
  readonly files: readonly SourceText[];
  /** Of all files, in order. */
  readonly blocks: readonly Block[];
}

const PROCESSOR = unified().use(remarkParse).use(remarkGfm).freeze();

/** Markdown in, top-level content out. Content is not changed by anyone: it may be handed out again. */
export const parseMarkdown = (text: string): readonly RootContent[] => PROCESSOR.parse(text).children;

/** Reads the files as one document. */
export function readDocument(files: readonly SourceFile[], parse: ParsePart): Document {
  const sources = files.map(file => createSourceText(file.path, file.text));
  return { files: sources, blocks: sources.flatMap(source => readBlocks(source, parse)) };
}

function readBlocks(source: SourceText, parse: ParsePart): readonly Block[] {
  const offsets = cutParts(source.text, source.lineStarts[0] ?? 0);
  return offsets.flatMap((base, index) => {
    const { part, content } = parse(source, base, source.text.slice(base, offsets[index + 1]));
    return content.map(node => ({ node, part }));
  });
}

export function placeOfBlock({ node, part }: Block): Place {
  return placeIn(part, node.position?.start.offset ?? 0, node.position?.end.offset ?? 0);
}

/** Content that says nothing to anyone: comments, definitions of links, rules. */
export function isComment(node: RootContent): boolean {
  if (node.type === 'html') return /^\s*<!--/.test(node.value);
  return node.type === 'definition' || node.type === 'thematicBreak';
}

/** Prose for people, its positions counted in its file. */
export function proseOf(blocks: readonly Block[]): readonly RootContent[] {
  return blocks.filter(({ node }) => !isComment(node) || node.type === 'thematicBreak').map(movedNode);
}

function movedNode({ node, part }: Block): RootContent {
  const line = lineAt(part.source, part.base);
  const column = part.base - (part.source.lineStarts[line] ?? 0);
  if (part.base === 0) return node;
  const moved = structuredClone(node);
  visit(moved, ({ position }) => {
    for (const point of position === undefined ? [] : [position.start, position.end]) {
      if (point.line === 1) point.column += column;
      point.line += line;
      point.offset = (point.offset ?? 0) + part.base;
    }
  });
  return moved;
}
