import { numberText, oneLine } from './assembly.js';
import type { Handoff } from './model.js';

const VALUE_COLUMN = 48;

/** `controls.h`: the same symbols as macros, for cc65 and any C compiler (C89). */
export function writeHeader({ scheme, names, symbols }: Handoff): string {
  const guard = `${names.prefix}CONTROLS_H`;
  const lines = [
    `/* ${oneLine(scheme.title.value)}: controls. Made from the scheme. */`,
    `#ifndef ${guard}`,
    `#define ${guard}`,
    ...symbols.flatMap(({ title, entries }) => [
      '',
      `/* ${oneLine(title)} */`,
      ...entries.map(({ name, value, about }) => {
        const define = `#define ${name.padEnd(VALUE_COLUMN)} 0x${numberText(value).slice(1)}`;
        return about === '' ? define : `${define} /* ${oneLine(about)} */`;
      }),
    ]),
    '',
    '#endif',
  ];
  return `${lines.join('\n')}\n`;
}
