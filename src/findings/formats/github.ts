import { RULES } from '../catalogue.js';
import type { Finding } from '../finding.js';
import type { Severity } from '../rule.js';

const COMMANDS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * Workflow commands, one line a finding: the forge shows them at the lines concerned. Accepted findings are
 * left out: they ask for nothing.
 */
export function writeGithub(findings: readonly Finding[]): string {
  return findings.map(commandOf).join('');
}

function commandOf(finding: Finding): string {
  if (finding.severity === 'accepted') return '';
  const { start, end } = finding.at.range;
  const properties = [
    ['file', finding.at.file],
    ['line', start.line],
    ['endLine', end.line],
    // The forge shows columns only of a finding on one line; its last column is included.
    ...(start.line === end.line
      ? [
          ['col', start.column],
          ['endColumn', Math.max(start.column, end.column - 1)],
        ]
      : []),
    ['title', finding.rule],
  ].map(([key, value]) => `${key}=${escapeProperty(String(value))}`);
  const body = [
    finding.message,
    RULES[finding.rule].effect,
    ...finding.waysOut.map(way => `Way out: ${way}`),
  ].join('\n');
  return `::${COMMANDS[finding.severity]} ${properties.join(',')}::${escapeData(body)}\n`;
}

function escapeData(text: string): string {
  return text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

function escapeProperty(text: string): string {
  return escapeData(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}
