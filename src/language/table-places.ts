import type { Table, TableCell } from 'mdast';
import type { Place } from '../findings/place.js';
import { type Block, placeOfBlock } from './document.js';
import { placeFromTo, readWords, type Words } from './words.js';

/** Of the words of its heading row. */
export function headerPlace({ children: [header] }: Table, block: Block): Place {
  const place = placeOfBlock(block);
  return header === undefined
    ? place
    : rowPlace(
        header.children.map(cell => cellWords(cell, block)),
        place,
      );
}

export function cellWords(cell: TableCell, { part }: Block): Words {
  return readWords(cell, part, true);
}

/** From the first word of a row to its last. */
export function rowPlace(cells: readonly Words[], otherwise: Place): Place {
  const said = cells.filter(words => words.text !== '');
  const [first] = said;
  const last = said.at(-1);
  if (first === undefined || last === undefined) return otherwise;
  return placeFromTo(first, last);
}
