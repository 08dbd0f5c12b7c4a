import type { Random } from '../support/random.js';

/** Sections that say nothing about play: the generators of schemes leave them out. */
const SECTIONS: readonly ((random: Random) => string)[] = [
  random => table('Timing', ['Name', 'Time'], [['long pull', `${1 + random.below(3)} s`]]),
  random =>
    table(
      'Switches',
      ['Switch', 'Position or use', 'Say it as'],
      [
        ['RESET', 'use', 'Start again'],
        ['left difficulty', random.pick(['A', 'B']), 'A stronger wind'],
      ],
    ),
  random =>
    table(
      'Overlays',
      ['Item', 'Value'],
      [
        ['Key width', `${8 + random.below(6)}.5 mm`],
        ['Strip height', `${12 + random.below(30)} mm`],
        ['Bleed', `${random.below(4)} mm`],
      ],
    ),
  random =>
    table(
      'Accepted',
      ['Rule', 'Where', 'Why'],
      [
        [
          random.pick(RULES),
          random.pick(['—', 'First', 'First; Deed 1', 'six-switch', 'Row 1']),
          'So it is meant',
        ],
        [random.pick(RULES), '—', 'Looked at'],
      ],
    ),
  random => `## Manual: The ${random.pick(['story', 'machine', 'end'])}\n\n${random.pick(PROSE)}`,
];

const RULES = [
  'same-moment',
  'on-the-way',
  'in-passing',
  'lost-action',
  'no-way-out',
  'idle-control',
  'no-words',
];

const PROSE = [
  'Plain words, *stressed* words and `code`.',
  '- one\n- two\n  1. deeper\n\n> quoted\n\n### A heading\n\n---\n\nThe end.',
  '| a | b |\n| --- | --: |\n| 1 | 2 |\n\nA note[^1].\n\n[^1]: It is here.',
  '```\ncode | with | bars\n```\n\n<b>not bold</b> [a link](https://example.org/) ![a picture](x.png)',
];

/** The scheme with some of the sections it does not have. */
export function withExtraSections(scheme: string, random: Random): string {
  const chosen = SECTIONS.filter(() => random.chance(0.3)).map(section => section(random));
  return [scheme.trimEnd(), ...chosen].join('\n\n').concat('\n');
}

function table(heading: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [`## ${heading}\n`, line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}
