import { comments, equate, numberText, oneLine } from './assembly.js';
import type { Handoff } from './model.js';

/** `controls.inc`: plain `NAME = $xx`, the same to ca65, 64tass, xa and acme. */
export function writeInclude({ scheme, symbols }: Handoff): string {
  const lines = [
    ...comments(plain(`${scheme.title.value}: controls. Made from the scheme.`)),
    ...symbols.flatMap(({ title, entries }) => [
      '',
      ...comments(plain(title)),
      ...entries.map(({ name, value, about }) => equate(name, numberText(value), plain(about))),
    ]),
  ];
  return `${lines.join('\n')}\n`;
}

/** What every assembler leaves alone in a comment: xa ends one at a colon and reads on behind it. */
function plain(text: string): string {
  return oneLine(text)
    .replace(/[:;]/g, ',')
    .replace(/[^A-Za-z0-9 ,.()+-]/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
}
