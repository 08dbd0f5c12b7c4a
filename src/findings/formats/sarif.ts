import { isAbsolute } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Location, Log, PhysicalLocation, PropertyBag, ReportingDescriptor, Result } from 'sarif';
import { FAMILIES, RULES, type RuleId } from '../catalogue.js';
import type { Finding, RelatedPlace } from '../finding.js';
import type { Place } from '../place.js';
import type { Rule } from '../rule.js';

const SCHEMA = 'https://json.schemastore.org/sarif-2.1.0.json';

/** The findings in the static analysis results interchange format, SARIF 2.1.0 (OASIS standard). */
export function writeSarif(findings: readonly Finding[], version: string): string {
  const ids = Object.keys(RULES) as readonly RuleId[];
  const log: Log = {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Leverleaf', version, rules: ids.map(descriptorOf) } },
        columnKind: 'utf16CodeUnits',
        results: findings.map(finding => resultOf(finding, ids.indexOf(finding.rule))),
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function descriptorOf(id: RuleId): ReportingDescriptor {
  const rule: Rule = RULES[id];
  const families = Object.entries(FAMILIES).filter(([, rules]) => Object.hasOwn(rules, id));
  return {
    id,
    shortDescription: { text: escapeMessage(rule.effect) },
    fullDescription: { text: escapeMessage(rule.explanation) },
    help: { text: escapeMessage(helpText(rule)), markdown: escapeMessage(helpMarkdown(rule)) },
    defaultConfiguration: { level: rule.severity },
    properties: { tags: families.map(([family]) => family) },
  };
}

function helpText({ explanation, waysOut }: Rule): string {
  return [explanation, ...waysOut.map(way => `Way out: ${withoutBraces(way)}`)].join('\n');
}

function helpMarkdown({ explanation, waysOut, example }: Rule): string {
  const ways = waysOut.map(way => `- ${withoutBraces(way)}`).join('\n');
  return `${explanation}\n\n${ways}\n\n\`\`\`markdown\n${example}\n\`\`\``;
}

/** A text of the catalogue with the bare names of its parameters. */
function withoutBraces(text: string): string {
  return text.replace(/\{([A-Za-z]+)\}/g, '$1');
}

function resultOf(finding: Finding, ruleIndex: number): Result {
  const { rule, severity, message, at, waysOut, related = [], why } = finding;
  const text = [message, RULES[rule].effect, ...waysOut.map(way => `Way out: ${way}`)].join('\n');
  const properties = propertiesOf(finding);
  return {
    ruleId: rule,
    ruleIndex,
    level: severity === 'accepted' ? RULES[rule].severity : severity,
    message: { text: escapeMessage(text) },
    locations: [{ physicalLocation: physicalLocation(at) }],
    ...(related.length === 0 ? {} : { relatedLocations: related.map(relatedLocation) }),
    ...(severity === 'accepted'
      ? { suppressions: [{ kind: 'inSource', status: 'accepted', ...(why && { justification: why }) }] }
      : {}),
    ...(Object.keys(properties).length === 0 ? {} : { properties }),
  };
}

/** What the finding concerns, as in the report of our own. */
function propertiesOf(finding: Finding): PropertyBag {
  const { mode, seats, consoles, standards, players, actions, settings, values, controls } = finding;
  const { variation, where, witness } = finding;
  const all = { mode, seats, consoles, standards, players, actions, settings, values, controls };
  const more = { variation, where, witness };
  return Object.fromEntries(
    Object.entries({ ...all, ...more }).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  );
}

function relatedLocation(related: RelatedPlace, index: number): Location {
  return {
    id: index,
    physicalLocation: physicalLocation(related),
    message: { text: escapeMessage(related.message) },
  };
}

function physicalLocation({ file, range: { start, end } }: Place): PhysicalLocation {
  return {
    artifactLocation: { uri: uriOf(file) },
    region: {
      startLine: start.line,
      startColumn: start.column,
      endLine: end.line,
      endColumn: end.column,
      charOffset: start.offset,
      charLength: end.offset - start.offset,
    },
  };
}

function uriOf(path: string): string {
  if (isAbsolute(path)) return pathToFileURL(path).href;
  return path.split(/[\\/]/).map(encodeURIComponent).join('/');
}

/** Braces stand for parameters in a message (SARIF 2.1.0, 3.11.5), so that those of a text are doubled. */
function escapeMessage(text: string): string {
  return text.replace(/[{}]/g, brace => brace + brace);
}
