import { applyAccepted } from './checks/accepted.js';
import { checkConflicts } from './checks/conflicts.js';
import { TooManyStatesError } from './checks/coverage/diagram-store.js';
import type { IsUsable } from './checks/coverage/offers.js';
import { checkCoverage } from './checks/coverage.js';
import type { Coverage } from './checks/coverage-model.js';
import { checkTiming } from './checks/timing.js';
import { checkWiring } from './checks/wiring.js';
import { checkWords } from './checks/words.js';
import { createKeyFit } from './documents/overlays/keys-fit.js';
import { builtInTemplates } from './documents/page/templates.js';
import { checkPhrases } from './documents/phrases.js';
import { compareFindings, type Finding } from './findings/finding.js';
import type { SourceFile } from './findings/place.js';
import { createReport, type Report } from './findings/report.js';
import type { Scheme } from './language/model.js';
import { type ReadScheme, readScheme } from './language/read.js';

export interface CompileOptions {
  /** Folder of a publisher's templates; the built-in ones if left out. */
  readonly templates?: string;
  /** In place of a new reader: one that keeps what it has parsed (`createReader`). */
  readonly read?: ReadScheme;
}

export interface Compiled {
  /** Null where there is no mode to build a scheme from; not `complete` where a language rule found an error. */
  readonly scheme: Scheme | null;
  /** In the order of the report. */
  readonly findings: readonly Finding[];
  /** Null where the scheme is not complete or has too many states to explore. */
  readonly coverage: Coverage | null;
}

/** Reads a scheme and checks it. `files` are read as one document, in the order given. */
export function compile(
  files: readonly SourceFile[],
  { read = readScheme, templates = builtInTemplates }: CompileOptions = {},
): Compiled {
  const { report, findings } = createReport();
  const scheme = read(files, report);
  if (scheme === null) return { scheme, findings: findings.toSorted(compareFindings), coverage: null };
  checkWiring(scheme, report);
  checkTiming(scheme, report);
  const isUsable = checkConflicts(scheme, report);
  checkWords(scheme, report, createKeyFit(scheme));
  checkPhrases(scheme, templates, report);
  const coverage = scheme.complete ? exploreCoverage(scheme, report, isUsable) : null;
  const checked = scheme.complete ? findings : findings.filter(isSureInPart);
  const late = createReport();
  const accepted = applyAccepted(scheme, checked, late.report);
  return { scheme, findings: [...accepted, ...late.findings].sort(compareFindings), coverage };
}

/** Null where there are too many states to explore; the finding says so. */
function exploreCoverage(scheme: Scheme, report: Report, isUsable: IsUsable | null): Coverage | null {
  try {
    return checkCoverage(scheme, report, {}, isUsable);
  } catch (error) {
    if (!(error instanceof TooManyStatesError)) throw error;
    report('too-many-states', scheme.title.at, { limit: error.limit });
    return null;
  }
}

/** In a scheme that is only read in part, what seems not to be used may stand in a row that was left out. */
const isSureInPart = ({ rule }: Finding): boolean => rule !== 'unused-action' && rule !== 'unused-setting';
