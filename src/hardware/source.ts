/**
 * Where a fact of the machine comes from. Each entry of the hardware tables names one of these.
 */
export const SOURCES = {
  G: 'S. Wright, programmer’s guide to the console’s TIA and PIA, 3 December 1979',
  M: 'MOS Technology, MCS6500 family programming manual, 1976',
  D: 'MOS Technology, 6532 data sheet',
  V: 'ITU-R BT.1700 and SMPTE 170M (colour subcarriers)',
  P: 'common practice, no source',
  R: 'from memory, to be checked on the bench',
} as const;

export type SourceKey = keyof typeof SOURCES;

/** A source and, for a paged one, the section in it (`PIA 5.3`). */
export interface Source {
  readonly key: SourceKey;
  readonly section?: string;
}

/** A source as it is printed: `programmer’s guide …, section PIA 5.3`. */
export function sourceText(source: Source): string {
  const name = SOURCES[source.key];
  return source.section === undefined ? name : `${name}, section ${source.section}`;
}

export function fromSource(key: SourceKey, section?: string): Source {
  return section === undefined ? { key } : { key, section };
}
