/** A position in a file: line and column count from 1, offset from 0 in UTF-16 code units (as unist's Point). */
export interface Point {
  readonly line: number;
  readonly column: number;
  readonly offset: number;
}

/** A stretch of a file; `end` is exclusive. */
export interface Range {
  readonly start: Point;
  readonly end: Point;
}

/** Where a value's own words stand. `file` is the path as it was given to the compiler. */
export interface Place {
  readonly file: string;
  readonly range: Range;
}

/** A value and the place of its words. */
export interface Placed<T> {
  readonly value: T;
  readonly at: Place;
}

/** A source file: `path` as given by the user (used in findings), `text` decoded. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}
