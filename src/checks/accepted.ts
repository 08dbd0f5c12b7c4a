import { FAMILIES } from '../findings/catalogue.js';
import type { Finding } from '../findings/finding.js';
import type { Report } from '../findings/report.js';
import type { AcceptedKind, AcceptedName, AcceptedRow, Scheme } from '../language/model.js';

/** The rules that a designer can accept. A fault of the language leaves a hole in the scheme: it stays. */
const ACCEPTABLE: readonly string[] = Object.entries(FAMILIES)
  .filter(([family]) => family !== 'language')
  .flatMap(([, rules]) => Object.keys(rules));

/**
 * The findings, those that a row of `## Accepted` covers with severity `accepted` and the designer's reason.
 * Reports the rows that cover none, where the whole scheme could be checked.
 */
export function applyAccepted(
  scheme: Scheme,
  findings: readonly Finding[],
  report: Report,
): readonly Finding[] {
  const used = new Set<AcceptedRow>();
  const applied = findings.map(finding => {
    const rows = scheme.accepted.filter(row => covers(row, finding));
    for (const row of rows) used.add(row);
    const [first] = rows;
    if (first === undefined) return finding;
    return { ...finding, severity: 'accepted', ...(first.why === '' ? {} : { why: first.why }) } as const;
  });
  for (const row of scheme.accepted) if (!used.has(row)) reportUnused(scheme, row, report);
  return applied;
}

function covers({ rule, where }: AcceptedRow, finding: Finding): boolean {
  return rule === finding.rule && ACCEPTABLE.includes(rule) && where.every(name => concerns(finding, name));
}

function reportUnused(scheme: Scheme, row: AcceptedRow, report: Report): void {
  const isAcceptable = ACCEPTABLE.includes(row.rule);
  if (isAcceptable && !scheme.complete) return;
  report(
    'unused-accepted',
    row.at,
    { rule: row.rule, where: whereText(row) },
    isAcceptable
      ? {}
      : {
          waysOut: [
            'Mend what the rule finds and take the row out: a fault of the language can’t be accepted.',
          ],
        },
  );
}

function whereText({ where }: AcceptedRow): string {
  return where.length === 0 ? 'the whole scheme' : where.map(({ name }) => name).join('; ');
}

const NAMED: Readonly<Record<AcceptedKind, (finding: Finding) => readonly string[]>> = {
  mode: ({ mode }) => (mode === undefined ? [] : [mode]),
  action: ({ actions }) => actions ?? [],
  setting: ({ settings }) => settings ?? [],
  seats: ({ seats }) => seats ?? [],
  console: ({ consoles }) => consoles ?? [],
};

function concerns(finding: Finding, { things }: AcceptedName): boolean {
  return things.some(({ kind, name }) => NAMED[kind](finding).includes(name));
}
