import type { Finding } from '../../src/findings/finding.js';
import type { Place, SourceFile } from '../../src/findings/place.js';

/** Lines with all that makes underlining hard; the words to mark stand between ⟦ and ⟧. */
const LINES = [
  '# Tin Whistle',
  '| left | ⟦Blow⟧ | button | press |',
  '\t⟦two\ttabs⟧\tafter',
  '| 笛を吹く | ⟦笛⟧ | wide before and in the words |',
  `| e\u0301te\u0301 | ⟦e\u0301te\u0301⟧ | combining marks |`,
  '| 👩‍🚀 | ⟦x⟧ | one picture of five characters |',
  '| \u001b[31mred\u0007 | ⟦\u202ebad⟧ | what would act on a terminal |',
  `| ${'long '.repeat(40)}⟦here⟧ ${'and on '.repeat(40)}|`,
  '⟦⟧',
];

export interface Sample {
  readonly file: SourceFile;
  /** The marked words, line by line from line 2. */
  readonly places: readonly Place[];
}

export function sampleFile(path = 'schemes/tin whistle.md'): Sample {
  const places: Place[] = [];
  let offset = 0;
  const texts = LINES.map((marked, index) => {
    const start = marked.indexOf('⟦');
    const end = marked.indexOf('⟧') - 1;
    const text = marked.replace(/[⟦⟧]/g, '');
    const point = (at: number) => ({ line: index + 1, column: at + 1, offset: offset + at });
    if (start >= 0) places.push({ file: path, range: { start: point(start), end: point(end) } });
    offset += text.length + 1;
    return text;
  });
  return { file: { path, text: texts.join('\n') }, places };
}

export function sampleFindings({ places }: Sample): readonly Finding[] {
  return places.map((at, index) => ({
    rule: 'no-words',
    severity: 'warning',
    message: `Number ${index + 1}.`,
    at,
    waysOut: ['Say something.'],
  }));
}

/** A finding with everything a finding can have. */
export function fullFinding({ places: [at, related] }: Sample): Finding {
  if (at === undefined || related === undefined) throw new RangeError('the sample has no places');
  return {
    rule: 'ghost-chord',
    severity: 'error',
    message:
      'Three corners: 100 % {sure}, and\nmore than one line long, so that it is wrapped at the width of the terminal.',
    at,
    mode: 'Tune',
    seats: ['Solo', 'Duet'],
    consoles: ['six-switch'],
    standards: ['NTSC', 'PAL'],
    players: ['left'],
    actions: ['Blow', 'Trill'],
    settings: ['Key'],
    values: ['C', 'D'],
    controls: ['left button'],
    variation: '1',
    where: [['six-switch', 'Solo', 'NTSC']],
    related: [{ ...related, message: 'the other is here' }],
    waysOut: ['Use two keys.', 'Use keys of one row.'],
    witness: {
      standard: 'NTSC',
      steps: [
        { read: 0, engaged: [], fires: [] },
        { read: 1, engaged: ['left button'], fires: ['Blow'] },
        { read: 2, engaged: ['left button'], fires: [] },
        { read: 3, engaged: ['left button'], fires: [] },
        { read: 4, engaged: [], fires: ['Trill', 'Rest'] },
      ],
    },
  };
}

export function acceptedFinding({ places: [at] }: Sample): Finding {
  if (at === undefined) throw new RangeError('the sample has no places');
  return {
    rule: 'hair-trigger-reset',
    severity: 'accepted',
    message: 'A touch is enough.',
    at,
    waysOut: ['Use hold.'],
    why: 'As it always was.',
  };
}
