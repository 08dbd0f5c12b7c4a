import type { Verdict } from '../../checks/coverage-model.js';
import type { Finding } from '../../findings/finding.js';
import { countFindings, type Summary } from '../../findings/summary.js';
import type { Scheme } from '../../language/model.js';
import type { DocumentInput } from '../document.js';
import { type FindingView, viewFinding } from './finding-view.js';
import { type MatrixView, viewMatrix } from './matrix-view.js';
import { type RecipeView, viewModeRecipes, viewVariationRecipes } from './recipe-view.js';

/** Everything the report says. */
export interface ReportView {
  readonly title: string;
  readonly version: string;
  readonly verdict: VerdictView;
  readonly summary: Summary;
  readonly facts: readonly (readonly [name: string, value: string])[];
  /** Errors, warnings, notes; those without findings left out. */
  readonly groups: readonly FindingGroup[];
  readonly accepted: readonly FindingView[];
  /** Null where coverage could not be explored. */
  readonly matrix: MatrixView | null;
  readonly modeRecipes: readonly RecipeView[];
  readonly variationRecipes: readonly RecipeView[];
}

export interface FindingGroup {
  readonly severity: Finding['severity'];
  readonly title: string;
  readonly findings: readonly FindingView[];
}

/** The report in one sentence. */
export interface VerdictView {
  readonly mark: Exclude<Verdict, 'not offered'>;
  readonly headline: string;
  readonly sentence: string;
}

const GROUPS = [
  { severity: 'error', title: 'Errors' },
  { severity: 'warning', title: 'Warnings' },
  { severity: 'note', title: 'Notes' },
] as const;

export function viewReport({ scheme, findings, coverage, files }: DocumentInput): ReportView {
  const numbered = numberFindings(findings).map(({ finding, number }) =>
    viewFinding(finding, number, scheme, files),
  );
  const summary = countFindings(findings);
  const matrix = coverage === null ? null : viewMatrix(coverage, scheme);
  return {
    title: scheme.title.value,
    version: scheme.game.version,
    verdict: viewVerdict(summary, matrix),
    summary,
    facts: viewFacts(scheme),
    groups: GROUPS.map(group => ({
      ...group,
      findings: numbered.filter(({ severity }) => severity === group.severity),
    })).filter(group => group.findings.length > 0),
    accepted: numbered.filter(({ severity }) => severity === 'accepted'),
    matrix,
    modeRecipes: coverage === null ? [] : viewModeRecipes(coverage, scheme),
    variationRecipes: coverage === null ? [] : viewVariationRecipes(coverage, scheme),
  };
}

const ORDER: readonly Finding['severity'][] = ['error', 'warning', 'note', 'accepted'];

/** Numbers in the order of the printed report: by severity, then as they came. */
function numberFindings(findings: readonly Finding[]) {
  const sorted = ORDER.flatMap(severity => findings.filter(finding => finding.severity === severity));
  return sorted.map((finding, index) => ({ finding, number: index + 1 }));
}

function viewVerdict({ errors, warnings, notes }: Summary, matrix: MatrixView | null): VerdictView {
  if (errors > 0) {
    return {
      mark: 'broken',
      headline: `Not ready: ${countText(errors, 'error')}`,
      sentence: 'Nothing else is built from this scheme until they are mended or accepted with a reason.',
    };
  }
  const altered = (matrix?.counts.altered ?? 0) + (matrix?.counts.broken ?? 0);
  if (warnings > 0 || altered > 0) {
    return {
      mark: 'altered',
      headline: warnings > 0 ? `Ready, with ${countText(warnings, 'warning')}` : 'Ready',
      sentence:
        altered > 0
          ? `The game plays otherwise than on a full console in ${altered} of the places below; see the matrix.`
          : 'The game plays everywhere; look at the warnings before it goes to players.',
    };
  }
  return {
    mark: 'plays',
    headline: 'Ready',
    sentence:
      notes > 0
        ? `No error and no warning; ${countText(notes, 'note')} to read.`
        : 'No finding: every press means one thing, and the game plays everywhere.',
  };
}

function countText(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function viewFacts(scheme: Scheme): ReportView['facts'] {
  const { modes, actions, seats, settings, variations, consoles, standards } = scheme;
  return [
    ['Modes', String(modes.length)],
    ['Actions', String(actions.length)],
    ['Settings', String(settings.length)],
    ['Variations', String(variations.length)],
    ['Seats rows', seats.map(({ name }) => name).join(', ')],
    ['Consoles', consoles.map(({ name }) => name).join(', ')],
    ['TV standards', standards.map(({ name }) => name).join(', ')],
    ['Files', scheme.files.join(', ')],
  ];
}
