import { recipeText } from '../checks/coverage/recipe-text.js';
import type { Coverage, CoverageCell, VariationCell } from '../checks/coverage-model.js';
import type { Finding } from '../findings/finding.js';
import type { Place, Range, SourceFile } from '../findings/place.js';
import { countFindings } from '../findings/summary.js';
import type { Scheme } from '../language/model.js';

export interface ReportJsonInput {
  /** Null where there was nothing to read one from. */
  readonly scheme: Scheme | null;
  readonly files: readonly SourceFile[];
  /** In the order of the report. */
  readonly findings: readonly Finding[];
  readonly coverage: Coverage | null;
}

/** The report as data: fields in a fixed order, those without a value left out, the same bytes each time. */
export function writeReportJson({ scheme, files, findings, coverage }: ReportJsonInput): string {
  const report = {
    format: 'leverleaf-report',
    version: 1,
    scheme: {
      title: scheme?.title.value || undefined,
      shortName: scheme?.game.shortName.value || undefined,
      files: files.map(({ path }) => path),
    },
    findings: findings.map(writeFinding),
    coverage: (coverage?.cells ?? []).map(writeCell),
    variations: (coverage?.variations ?? []).map(writeVariation),
    summary: countFindings(findings),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}

function writeFinding(finding: Finding) {
  const { rule, severity, message, at, witness } = finding;
  return {
    rule,
    severity,
    message,
    ...writePlace(at),
    mode: finding.mode,
    seats: filled(finding.seats),
    consoles: filled(finding.consoles),
    standards: filled(finding.standards),
    players: filled(finding.players),
    actions: filled(finding.actions),
    settings: filled(finding.settings),
    values: filled(finding.values),
    controls: filled(finding.controls),
    variation: finding.variation,
    where: filled(finding.where),
    related: filled(finding.related?.map(place => ({ ...writePlace(place), message: place.message }))),
    waysOut: finding.waysOut,
    why: finding.why,
    witness: witness && {
      standard: witness.standard,
      steps: witness.steps.map(({ read, engaged, fires }) => ({ read, engaged, fires })),
    },
  };
}

function filled<T>(list: readonly T[] | undefined): readonly T[] | undefined {
  return list?.length ? list : undefined;
}

function writePlace({ file, range }: Place) {
  return { file, range: writeRange(range) };
}

function writeRange({ start, end }: Range) {
  return {
    start: { line: start.line, column: start.column, offset: start.offset },
    end: { line: end.line, column: end.column, offset: end.offset },
  };
}

function writeCell(cell: CoverageCell) {
  return {
    console: cell.console.name,
    seats: cell.seats.name,
    standard: cell.standard.name,
    mode: cell.mode.name,
    verdict: cell.verdict,
    lostActions: filled(cell.lostActions),
    lostValues: filled(cell.lostValues.map(({ setting, value }) => `${setting.name}: ${value}`)),
    recipe: cell.recipe === null ? undefined : recipeText(cell.recipe),
  };
}

function writeVariation(cell: VariationCell) {
  return {
    variation: cell.variation.name,
    console: cell.console.name,
    seats: cell.seats.name,
    standard: cell.standard.name,
    reachable: cell.recipe !== null,
    recipe: cell.recipe === null ? undefined : recipeText(cell.recipe),
  };
}
