import { RULES } from '../../findings/catalogue.js';
import type { Finding } from '../../findings/finding.js';
import type { SourceFile } from '../../findings/place.js';
import type { Scheme } from '../../language/model.js';
import { type Excerpt, placeText, viewExcerpt } from './excerpt.js';
import { type TimingView, viewTiming } from './timing-view.js';

/** One finding as it is printed. */
export interface FindingView {
  /** From 1, over the whole report. */
  readonly number: number;
  readonly rule: string;
  readonly severity: Finding['severity'];
  readonly message: string;
  /** What it does to the player. */
  readonly effect: string;
  readonly excerpt: Excerpt | null;
  readonly where: string;
  readonly related: readonly {
    readonly message: string;
    readonly where: string;
    readonly excerpt: Excerpt | null;
  }[];
  /** `Seats`: `Solo, Duet`, and so on; only what the finding names. */
  readonly concerns: readonly (readonly [name: string, values: string])[];
  readonly waysOut: readonly string[];
  readonly timing: TimingView | null;
  /** The designer's reason, where it is accepted. */
  readonly why: string | null;
}

/** @param scheme gives the reads their milliseconds */
export function viewFinding(
  finding: Finding,
  number: number,
  scheme: Scheme,
  files: readonly SourceFile[],
): FindingView {
  return {
    number,
    rule: finding.rule,
    severity: finding.severity,
    message: finding.message,
    effect: RULES[finding.rule].effect,
    excerpt: viewExcerpt(finding.at, files),
    where: placeText(finding.at),
    related: (finding.related ?? []).map(place => ({
      message: place.message,
      where: placeText(place),
      excerpt: viewExcerpt(place, files),
    })),
    concerns: concernsOf(finding),
    waysOut: finding.waysOut,
    timing: finding.witness === undefined ? null : viewTiming(finding.witness, scheme),
    why: finding.why ?? null,
  };
}

type ListField =
  | 'seats'
  | 'consoles'
  | 'standards'
  | 'players'
  | 'actions'
  | 'settings'
  | 'values'
  | 'controls';

const CONCERNS: readonly (readonly [name: string, field: ListField])[] = [
  ['Actions', 'actions'],
  ['Settings', 'settings'],
  ['Values', 'values'],
  ['Controls', 'controls'],
  ['Players', 'players'],
  ['Seats', 'seats'],
  ['Consoles', 'consoles'],
  ['TV standards', 'standards'],
];

function concernsOf(finding: Finding): FindingView['concerns'] {
  const lists = CONCERNS.flatMap(([name, field]) => {
    const values = finding[field] ?? [];
    return values.length === 0 ? [] : [[name, values.join(', ')] as const];
  });
  return [
    ...(finding.mode === undefined ? [] : [['Mode', finding.mode] as const]),
    ...(finding.variation === undefined ? [] : [['Variation', finding.variation] as const]),
    ...lists,
  ];
}
