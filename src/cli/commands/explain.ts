import { FAMILIES, isRuleId, RULES, type RuleId } from '../../findings/catalogue.js';
import { wrapText } from '../../findings/formats/terminal-text.js';
import type { Rule } from '../../findings/rule.js';
import { nearest, normal } from '../../language/spelling.js';
import { CliError } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import type { Terminal } from '../terminal.js';

/** `leverleaf explain`: one rule in full, or the list of all. */
export async function explain(rule: string | undefined, terminal: Terminal): Promise<ExitCode> {
  await terminal.out(rule === undefined ? listRules(terminal) : explainRule(findRule(rule), terminal));
  return 0;
}

function findRule(wanted: string): RuleId {
  const id = normal(wanted);
  if (isRuleId(id)) return id;
  const meant = nearest(id, Object.keys(RULES));
  const hint = meant === null ? '`leverleaf explain` lists all rules' : `did you mean “${meant}”?`;
  throw new CliError(`There is no rule “${wanted}”: ${hint}`);
}

function explainRule(id: RuleId, { colours, width }: Terminal): string {
  const rule: Rule = RULES[id];
  const paragraph = (text: string) => wrapText(text, width).join('\n');
  const ways = rule.waysOut.flatMap(way => indented(`- ${plain(way)}`, width));
  return `${[
    `${colours.bold(id)} ${colours.dim(`(${rule.severity})`)}`,
    paragraph(plain(rule.message)),
    paragraph(rule.explanation),
    `${colours.bold('What it does')}\n${paragraph(rule.effect)}`,
    `${colours.bold('Ways out')}\n${ways.join('\n')}`,
    `${colours.bold('Example')}\n${rule.example.replace(/^(?=.)/gm, '    ')}`,
  ].join('\n\n')}\n`;
}

function listRules({ colours, width }: Terminal): string {
  const longest = Math.max(...Object.keys(RULES).map(id => id.length));
  const families = Object.entries(FAMILIES).map(([family, rules]) => {
    const lines = Object.entries<Rule>(rules).flatMap(([id, rule]) => {
      const [first = '', ...more] = wrapText(rule.effect, Math.max(20, width - longest - 13));
      const rest = more.map(line => `${' '.repeat(longest + 13)}${line}`);
      return [`  ${id.padEnd(longest)}  ${colours.dim(rule.severity.padEnd(7))}  ${first}`, ...rest];
    });
    return [colours.bold(family), ...lines].join('\n');
  });
  return `${families.join('\n\n')}\n\nleverleaf explain RULE says more about one.\n`;
}

function indented(text: string, width: number): readonly string[] {
  return wrapText(text, width - 4).map((line, index) => (index === 0 ? line : `  ${line}`));
}

/** Parameters as words: `{action}` becomes ACTION. One that is put to the end of a word is there at times only. */
function plain(text: string): string {
  return text
    .replace(/(?<=[\w.”])\{[A-Za-z]+\}/g, '')
    .replace(/\{[xy]Doing\}/g, 'CONTROL GESTURE')
    .replace(/\{([A-Za-z]+)\}/g, (_, name: string) => name.toUpperCase());
}
