import type { Source } from '../../src/hardware/source.js';

/** A source as the design's tables write it: `G [PIA 5.3]`, `M`. Nothing is left out: an empty section shows. */
export const cite = (source: Source): string =>
  'section' in source ? `${source.key} [${source.section}]` : source.key;

export const citeAll = (sources: readonly Source[]): readonly string[] => sources.map(cite);
