import type { RuleId } from './catalogue.js';
import type { Place } from './place.js';
import type { Severity } from './rule.js';

/** A fault found in a scheme. Optional lists are left out where they have nothing to say. */
export interface Finding extends FindingDetails {
  readonly rule: RuleId;
  /** `accepted` where a row of `## Accepted` covers it. */
  readonly severity: Severity | 'accepted';
  readonly message: string;
  /** The words it points at. */
  readonly at: Place;
  /** At least one. */
  readonly waysOut: readonly string[];
  /** The designer's reason, for an accepted finding. */
  readonly why?: string;
}

/** What a finding concerns. All names as the scheme writes them, in the scheme's own order. */
export interface FindingDetails {
  readonly mode?: string;
  readonly seats?: readonly string[];
  readonly consoles?: readonly string[];
  readonly standards?: readonly string[];
  readonly players?: readonly string[];
  readonly actions?: readonly string[];
  readonly settings?: readonly string[];
  readonly values?: readonly string[];
  readonly controls?: readonly string[];
  readonly variation?: string;
  /** The exact cells it holds in: console, seats row, standard. */
  readonly where?: readonly (readonly [console: string, seats: string, standard: string])[];
  readonly related?: readonly RelatedPlace[];
  readonly witness?: Witness;
}

export interface RelatedPlace extends Place {
  readonly message: string;
}

/** A place to look at too; it goes along with the scheme as the place itself does. */
export function relatedTo(place: Place, message: string): RelatedPlace {
  return {
    get file() {
      return place.file;
    },
    get range() {
      return place.range;
    },
    message,
  };
}

/** A sequence of inputs that shows the fault, every read up to the last. */
export interface Witness {
  readonly standard: string;
  readonly steps: readonly WitnessStep[];
}

export interface WitnessStep {
  /** From 0. */
  readonly read: number;
  /** `left stick up`, `right button`, `RESET`, `TV type COLOR` (a switch that was moved). */
  readonly engaged: readonly string[];
  /** Actions. */
  readonly fires: readonly string[];
}

const ORDER_OF_TIES = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The order of the report: file, offset, rule, message. */
export function compareFindings(a: Finding, b: Finding): number {
  return (
    ORDER_OF_TIES(a.at.file, b.at.file) ||
    a.at.range.start.offset - b.at.range.start.offset ||
    ORDER_OF_TIES(a.rule, b.rule) ||
    ORDER_OF_TIES(a.message, b.message)
  );
}
