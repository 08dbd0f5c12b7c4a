import { RULES, type RuleId } from './catalogue.js';
import type { Finding, FindingDetails } from './finding.js';
import type { Place } from './place.js';
import { fillText, type MessageParameters, type Severity } from './rule.js';

/** What a report of one rule may bring besides its parameters. */
export interface ReportDetails extends FindingDetails {
  /** In place of the catalogue's ways out; at least one. */
  readonly waysOut?: readonly string[];
  /** Where the rule's severity depends on the case (`lost-action`). */
  readonly severity?: Severity;
}

/** Reports one finding: rule, the place of the words it points at, the parameters of its message. */
export type Report = <Id extends RuleId>(
  rule: Id,
  at: Place,
  parameters: MessageParameters<(typeof RULES)[Id]['message']>,
  details?: ReportDetails,
) => void;

/** As it is now: the places of a scheme that is read again go along with it. */
const placeNow = ({ file, range }: Place): Place => ({ file, range });

/** Everything that is reported, to be reported again later: the places are then where they are then. */
export function recordReports(work: (report: Report) => void): (report: Report) => void {
  const calls: ((report: Report) => void)[] = [];
  work((...call) => {
    calls.push(report => report(...call));
  });
  return report => {
    for (const call of calls) call(report);
  };
}

/** A report function and the list it fills. */
export function createReport(): { readonly report: Report; readonly findings: Finding[] } {
  const findings: Finding[] = [];
  const report: Report = (rule, at, parameters, details = {}) => {
    const entry = RULES[rule];
    const { severity = entry.severity, waysOut, related, ...rest } = details;
    findings.push({
      rule,
      severity,
      message: fillText(entry.message, parameters),
      at: placeNow(at),
      ...rest,
      ...(related === undefined
        ? {}
        : { related: related.map(place => ({ ...placeNow(place), message: place.message })) }),
      waysOut: waysOut ?? entry.waysOut.map(text => fillText(text, parameters)),
    });
  };
  return { report, findings };
}
