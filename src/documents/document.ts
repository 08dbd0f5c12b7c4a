import type { Coverage } from '../checks/coverage-model.js';
import type { Finding } from '../findings/finding.js';
import type { SourceFile } from '../findings/place.js';
import type { Scheme } from '../language/model.js';

/** What each document is made from. */
export interface DocumentInput {
  readonly scheme: Scheme;
  /** In the order of the report, accepted ones included. */
  readonly findings: readonly Finding[];
  /** Null where the scheme has faults that keep coverage from being explored. */
  readonly coverage: Coverage | null;
  /** The scheme's own files: the report quotes their lines. */
  readonly files: readonly SourceFile[];
  /** Path of the folder that holds styles, page furniture and phrases. */
  readonly templates: string;
}

/** A file of the set. */
export interface BuiltFile {
  /** A plain file name without folders: `controls.inc`. Never made from a scheme's text. */
  readonly name: string;
  /** Text is written as UTF-8, as it is. */
  readonly content: string | Uint8Array;
}

export type DocumentName = 'manual' | 'overlays' | 'bits' | 'report';

/** A document that is both a page to read and sheets to print: `NAME.html` and `NAME.pdf`. */
export interface PrintableDocument {
  readonly name: DocumentName;
  /** The whole document; refers to nothing outside itself. */
  readonly html: string;
  /** The HTML to print again, once it is known on which pages (from 1) the anchors with these ids stand. */
  readonly revise?: (anchors: {
    readonly pages: ReadonlyMap<string, number>;
    readonly count: number;
  }) => string;
  /** What the PDF says of itself, as is everything below. */
  readonly title: string;
  readonly subject?: string;
  /** BCP 47 tag. */
  readonly language: string;
}
