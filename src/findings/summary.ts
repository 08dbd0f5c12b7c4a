import type { Finding } from './finding.js';

/** How many findings there are of each severity. */
export interface Summary {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly accepted: number;
}

export function countFindings(findings: readonly Finding[]): Summary {
  const count = (severity: Finding['severity']) =>
    findings.filter(finding => finding.severity === severity).length;
  return {
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    accepted: count('accepted'),
  };
}

/** `2 errors, 1 note`; `no findings`. */
export function summaryText({ errors, warnings, notes, accepted }: Summary): string {
  const parts = [
    counted(errors, 'error', 'errors'),
    counted(warnings, 'warning', 'warnings'),
    counted(notes, 'note', 'notes'),
    counted(accepted, 'accepted finding', 'accepted findings'),
  ].filter(part => part !== '');
  return parts.length === 0 ? 'no findings' : parts.join(', ');
}

function counted(count: number, one: string, many: string): string {
  return count === 0 ? '' : `${count} ${count === 1 ? one : many}`;
}
