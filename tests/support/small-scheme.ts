import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import type { Scheme } from '../../src/language/model.js';
import { readScheme } from '../../src/language/read.js';

export interface SmallRow {
  readonly mode?: string;
  readonly who?: string;
  readonly action: string;
  readonly control: string;
  readonly gesture: string;
  readonly when?: string;
  /** The `Then` column. */
  readonly does?: string;
  readonly insteadOf?: string;
  readonly alongWith?: string;
}

export interface SmallOptions {
  /** Rows of `## Game`, by item. */
  readonly game?: Readonly<Record<string, string>>;
  readonly seats?: readonly string[];
  readonly settings?: readonly string[];
  /** Whole sections, after all others. */
  readonly extra?: string;
}

const HEAD =
  '| Who | Action | Control | Gesture | When | Then | Instead of | Along with |\n| --- | --- | --- | --- | --- | --- | --- | --- |';

/** The text of a scheme with these rows; the mode is `Yard` where a row names none. */
export function smallText(
  rows: readonly SmallRow[],
  { game = {}, seats, settings, extra = '' }: SmallOptions = {},
): string {
  const modes = [...new Set(rows.map(({ mode = 'Yard' }) => mode))];
  const actions = [...new Set(rows.map(({ action }) => action))];
  const facts = { 'Short name': 'YD', Consoles: 'six-switch', ...game };
  return [
    '# Yard\n\nA yard.\n\n## Game\n\n| Item | Value |\n| --- | --- |',
    ...Object.entries(facts).map(([item, value]) => `| ${item} | ${value} |`),
    '\n## Seats\n\n| Seats | Players | Left port | Right port |\n| --- | --- | --- | --- |',
    ...(seats ?? ['Solo | 1 | joystick | empty']).map(line => `| ${line} |`),
    '\n## Settings\n\n| Setting | Values | Starts as | Set by |\n| --- | --- | --- | --- |',
    ...(settings ?? ['Lamp | out, lit | out | game']).map(line => `| ${line} |`),
    '\n## Actions\n\n| Action | Say it as |\n| --- | --- |',
    ...actions.map(action => `| ${action} | Do ${action} |`),
    ...modes.flatMap(name => [
      `\n## Mode: ${name}\n\n${HEAD}`,
      ...rows.filter(({ mode = 'Yard' }) => mode === name).map(rowLine),
    ]),
    `\n${extra}`,
  ].join('\n');
}

function rowLine({
  who = 'each',
  action,
  control,
  gesture,
  when,
  does,
  insteadOf,
  alongWith,
}: SmallRow): string {
  return `| ${[who, action, control, gesture, when, does, insteadOf, alongWith].map(cell => cell ?? '').join(' | ')} |`;
}

/** The scheme of these rows; throws where the language finds a fault. */
export function smallScheme(rows: readonly SmallRow[], options?: SmallOptions): Scheme {
  const { report, findings } = createReport();
  const scheme = readScheme([{ path: 'yard.md', text: smallText(rows, options) }], report);
  if (scheme === null || findings.length > 0)
    throw new Error(findings.map(({ message }: Finding) => message).join('\n'));
  return scheme;
}
