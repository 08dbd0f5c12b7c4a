/**
 * Leverleaf as a library: `compile` reads and checks a scheme; the writers make its documents.
 *
 *     const { scheme, findings, coverage } = compile([{ path: 'game.md', text }]);
 */

export { type BuildSet, type BuildSetOptions, buildReport, buildSet } from './build-set.js';
export { recipeText } from './checks/coverage/recipe-text.js';
export type {
  Coverage,
  CoverageCell,
  RecipeStep,
  VariationCell,
  Verdict,
} from './checks/coverage-model.js';
export { type Compiled, type CompileOptions, compile } from './compile.js';
export { createBits } from './documents/bits/write.js';
export type { BuiltFile, DocumentInput, DocumentName, PrintableDocument } from './documents/document.js';
export { createIndex } from './documents/index-page/index-page.js';
export { createManual } from './documents/manual/manual.js';
export { createOverlays } from './documents/overlays/overlays.js';
export { builtInTemplates } from './documents/page/templates.js';
export { createReportDocument } from './documents/report/write.js';
export { type ReportJsonInput, writeReportJson } from './documents/report-json.js';
export { isRuleId, RULES, type RuleId } from './findings/catalogue.js';
export type { Finding, RelatedPlace, Witness, WitnessStep } from './findings/finding.js';
export { createColours } from './findings/formats/colours.js';
export { writeGithub } from './findings/formats/github.js';
export { writeSarif } from './findings/formats/sarif.js';
export { type TextOptions, writeText } from './findings/formats/text.js';
export type { Place, Placed, Point, Range, SourceFile } from './findings/place.js';
export type { Rule, RuleFamily, Severity } from './findings/rule.js';
export { countFindings, type Summary } from './findings/summary.js';
export { type HandoffInput, writeHandoff } from './handoff/index.js';
export type * from './language/model.js';
export { createReader, type ReadScheme } from './language/read.js';
