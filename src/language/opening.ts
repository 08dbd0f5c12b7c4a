import type { List, Table } from 'mdast';
import type { Report } from '../findings/report.js';
import { bareText } from './bare-text.js';
import { type Block, placeOfBlock } from './document.js';
import { badPlace, createSpot, type Spot } from './faults.js';
import { looksLikeTable } from './garbled.js';
import { headingText, LAYOUTS, SECTION_KINDS } from './layout.js';
import { OVERLAY_ITEMS } from './model.js';
import { GAME_ITEMS } from './read-game.js';
import { MODE_KEYS } from './read-modes.js';
import { normal, tidy } from './spelling.js';
import { cellWords, headerPlace } from './table-places.js';
import { placeOf, readWords } from './words.js';

/** What stands before the first section is prose: a table or a fact there would be read by no one. */
export function checkOpening(blocks: readonly Block[], report: Report): void {
  const spot = createSpot(report, '');
  for (const block of blocks) {
    const { node } = block;
    if (node.type === 'table') reportTable(node, block, spot);
    else if (node.type === 'paragraph' && looksLikeTable(node)) reportTable(null, block, spot);
    else if (node.type === 'list') reportFacts(node, block, spot);
  }
}

const WHERE = 'The opening';

function reportTable(table: Table | null, block: Block, spot: Spot): void {
  const headings = table === null ? [] : headingsFor(table, block);
  badPlace(
    spot,
    table === null ? placeOfBlock(block) : headerPlace(table, block),
    WHERE,
    'a table stands before the first section, where none is read',
    [
      headings.length === 0
        ? 'Put it under the heading it belongs to.'
        : `Put it under the heading ${headings.join(' or ')}.`,
      'If it is for readers only, put it under a heading `## Manual: TITLE`.',
    ],
  );
}

/** The headings whose tables have these columns. */
function headingsFor({ children: [header] }: Table, block: Block): readonly string[] {
  const columns = new Set(header?.children.map(cell => normal(cellWords(cell, block).text)));
  return SECTION_KINDS.filter(kind => {
    const needed = LAYOUTS[kind].columns.filter(column => column.needed);
    return needed.length > 0 && needed.every(({ name }) => columns.has(normal(name)));
  }).map(kind => `\`${headingText(kind)}\``);
}

const HOMES: readonly (readonly [heading: string, keys: readonly string[]])[] = [
  ['the table of `## Game`', GAME_ITEMS],
  ['a section `## Mode: NAME`', MODE_KEYS],
  ['the table of `## Overlays`', OVERLAY_ITEMS],
];

/** Only items that begin with a key of the language, shown in no code: other lists are prose. */
function reportFacts(list: List, block: Block, spot: Spot): void {
  for (const {
    children: [paragraph],
  } of list.children) {
    if (paragraph?.type !== 'paragraph') continue;
    const key = tidy(/^[^:]*(?=:)/.exec(bareText(paragraph))?.[0] ?? '');
    for (const [home, keys] of HOMES)
      if (keys.some(candidate => normal(candidate) === normal(key)))
        badPlace(
          spot,
          placeOf(readWords(paragraph, block.part, false)),
          WHERE,
          `“${key}” is said before the first section, where no facts are read`,
          [`Put it into ${home}.`],
        );
  }
}
