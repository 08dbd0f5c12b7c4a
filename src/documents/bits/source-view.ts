import { STANDARDS } from '../../hardware/clocks.js';
import { CONSOLES } from '../../hardware/consoles.js';
import { INSTRUCTION_SOURCE } from '../../hardware/instructions.js';
import { KEYPAD } from '../../hardware/keypad.js';
import { PORT_LINES } from '../../hardware/ports.js';
import { REGISTERS } from '../../hardware/registers.js';
import { fromSource, type Source, sourceText } from '../../hardware/source.js';
import { SWITCHES } from '../../hardware/switches.js';
import { PADDLE, WHEEL } from '../../hardware/turning.js';
import type { Scheme } from '../../language/model.js';

/** A fact (or several from one source) and where it comes from. */
export interface SourcedFact {
  readonly fact: string;
  readonly source: string;
}

/** The sources of every fact that the appendix of a scheme states, as the hardware tables name them. */
export function viewSources(scheme: Scheme): readonly SourcedFact[] {
  const facts: readonly (readonly [fact: string, sources: readonly Source[]])[] = [
    ...Object.values(REGISTERS).map(({ symbol, sources }) => [symbol, sources] as const),
    ...Object.values(PORT_LINES).map(({ line, sources }) => [`port line ${line}`, sources] as const),
    ...Object.values(SWITCHES).map(({ name, source }) => [name, [source]] as const),
    ...controllerFacts(scheme),
    ...scheme.consoles
      .filter(profile => CONSOLES.includes(profile))
      .map(({ name, source }) => [name, [source]] as const),
    ...scheme.standards.map(({ name }) => [`${name} rates`, STANDARDS[name].sources] as const),
    ['flags, cycles and bytes of instructions', [INSTRUCTION_SOURCE]],
  ];
  return joinFacts(facts.map(([fact, sources]) => ({ fact, source: sources.map(sourceText).join('; ') })));
}

function controllerFacts(scheme: Scheme): readonly (readonly [string, readonly Source[]])[] {
  const kinds = new Set(
    scheme.seats
      .flatMap(({ left, right }) => [left, right])
      .flatMap(controller => controller?.controls.map(({ wiring }) => wiring.kind) ?? []),
  );
  return [
    ...(kinds.has('pot')
      ? [
          ['paddles: scan lines of the knob', PADDLE.sources] as const,
          ['paddles: degrees of turn', [fromSource('P')]] as const,
        ]
      : []),
    ...(kinds.has('matrix')
      ? [
          ['keypad: rows and columns', KEYPAD.sources] as const,
          ['keypad: wait before the columns are read', [fromSource('G', 'PIA 5.5')]] as const,
          [`keypad: its ${KEYPAD.settleMicroseconds} µs`, [fromSource('R')]] as const,
        ]
      : []),
    ...(kinds.has('gray') ? [['wheel: code and steps', WHEEL.sources] as const] : []),
  ];
}

/** Facts that follow each other with the same source become one. */
function joinFacts(facts: readonly SourcedFact[]): readonly SourcedFact[] {
  const joined = new Map<string, string[]>();
  for (const { fact, source } of facts) joined.set(source, [...(joined.get(source) ?? []), fact]);
  return [...joined].map(([source, names]) => ({ fact: names.join(', '), source }));
}
