import { readdirSync, readFileSync } from 'node:fs';
import { compile } from '../../src/compile.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import { writeInclude } from '../../src/handoff/include.js';
import type { Handoff } from '../../src/handoff/model.js';
import { writeReadAsm } from '../../src/handoff/read-asm.js';
import type { ConsoleClass } from '../../src/handoff/units.js';
import type { TvStandard } from '../../src/hardware/clocks.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';
import { randomScheme } from '../support/random-scheme.js';
import type { Part } from '../support/sim65.js';

const SCHEMES = new URL('../../schemes/', import.meta.url);

/** The example schemes, compiled. */
export function exampleSchemes(): readonly { name: string; scheme: Scheme; findings: readonly Finding[] }[] {
  const names = readdirSync(SCHEMES).filter(name => name.endsWith('.md'));
  return names.map(name => {
    const { scheme, findings } = compile([
      { path: name, text: readFileSync(new URL(name, SCHEMES), 'utf8') },
    ]);
    if (scheme === null) throw new Error(`${name} has no mode`);
    return { name, scheme, findings };
  });
}

/** A random scheme, read; it must be without a fault of language. */
export function randomRead(seed: number): Scheme {
  return readText(randomScheme(seed, { shortName: `R${seed}` }));
}

export function readText(text: string): Scheme {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'scheme.md', text }], report);
  if (scheme === null || !scheme.complete)
    throw new Error(`not a scheme: ${findings.map(({ message }) => message).join('; ')}\n${text}`);
  return scheme;
}

/** A scheme's routine for one class of consoles and one standard, to be assembled. */
export function partOf(handoff: Handoff, consoles: ConsoleClass, standard: TvStandard): Part {
  const { prefix } = handoff.names;
  return {
    defines: {
      [`${prefix}PAL`]: standard.name === 'NTSC' ? 0 : 1,
      [`${prefix}CONSOLE`]: consoles.number,
    },
    files: { 'controls.inc': writeInclude(handoff), 'read.asm': writeReadAsm(handoff) },
    main: 'read.asm',
  };
}
