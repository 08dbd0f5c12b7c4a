import { describe, it } from 'vitest';
import { RULES } from '../../src/findings/catalogue.js';
import type { Finding, RelatedPlace, Witness } from '../../src/findings/finding.js';
import { foldWitness } from '../../src/findings/formats/timeline.js';
import { type Case, findingsOf, listCases } from '../support/cases.js';
import { expectGolden } from '../support/golden.js';

/**
 * Every word that the rules say in the cases, a golden file for each rule: what a case expects is told by its own
 * `expected.json`; here can be read, and seen to change, how people are told of it.
 */
describe.each(Object.keys(RULES))('what %s says', rule => {
  it('is worded as it was', () => {
    const cases = listCases().filter(one => one.rule === rule);
    expectGolden(`findings/${rule}.txt`, `${cases.flatMap(textOfCase).join('\n')}\n`);
  });
});

function textOfCase(one: Case): readonly string[] {
  const findings = findingsOf(one);
  return findings.length === 0 ? [] : [`== ${one.name}`, ...findings.flatMap(textOf), ''];
}

function textOf(finding: Finding): readonly string[] {
  const { at, severity, message, related = [], witness, waysOut } = finding;
  return [
    `${placeOf(at)} ${severity}: ${message}`,
    ...detailsOf(finding).map(line => `  ${line}`),
    ...related.map(place => `  also ${placeOf(place)} ${place.message}`),
    ...(witness === undefined ? [] : witnessLines(witness)),
    ...waysOut.map(way => `  way out: ${way}`),
  ];
}

const placeOf = ({ range }: Pick<RelatedPlace, 'range'>): string =>
  `${range.start.line}:${range.start.column}-${range.end.column}`;

const DETAILS = [
  'mode',
  'variation',
  'consoles',
  'seats',
  'standards',
  'players',
  'actions',
  'settings',
  'values',
  'controls',
] as const;

/** What it concerns, and the exact cells where it names them. */
function detailsOf(finding: Finding): readonly string[] {
  const said = DETAILS.flatMap(name => {
    const value = finding[name];
    return value === undefined ? [] : `${name}: ${typeof value === 'string' ? value : value.join(', ')}`;
  });
  const where = finding.where?.map(cell => cell.join('/')).join(', ');
  return [said.join('; '), ...(where === undefined ? [] : [`where: ${where}`])].filter(line => line !== '');
}

function witnessLines(witness: Witness): readonly string[] {
  const rows = foldWitness(witness).map(
    ({ first, last, engaged, fires }) =>
      `${first === last ? first : `${first}-${last}`} [${engaged.join(', ')}]${fires.length === 0 ? '' : ` ${fires.join(', ')}`}`,
  );
  return [`  on ${witness.standard}: ${rows.join('; ')}`];
}
