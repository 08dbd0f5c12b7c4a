import { stringify } from 'devalue';
import type { Finding } from '../../findings/finding.js';
import type { Scheme } from '../../language/model.js';

/** What only checks and documents need of each thing: where it stands and what it is known from. */
const LEFT_OUT: ReadonlySet<string> = new Set(['at', 'prose', 'sources', 'source']);

/** What the page is made from; its program needs no more. */
export interface PageSource {
  readonly scheme: Scheme;
  readonly findings: readonly Finding[];
  /** BCP 47 tag of the phrases. */
  readonly language: string;
  /** Phrases by key. */
  readonly texts: ReadonlyMap<string, string>;
}

/** What the page finds again: the scheme, findings that have a witness, and the phrases that its program says. */
export interface PageData {
  readonly scheme: Scheme;
  readonly findings: readonly WitnessedFinding[];
  readonly language: string;
  readonly texts: ReadonlyMap<string, string>;
}

export type WitnessedFinding = Pick<
  Finding,
  'rule' | 'severity' | 'message' | 'mode' | 'seats' | 'consoles' | 'actions' | 'witness'
>;

/** As text from which `parse` of devalue makes `PageData` again, with what is shared shared. */
export function writePageData({ scheme, findings, language, texts }: PageSource): string {
  const played: Scheme = {
    ...scheme,
    opening: [],
    files: [],
    switchWords: [],
    controllers: [],
    accepted: [],
    overlays: [],
    chapters: [],
  };
  const said = new Map([...texts].filter(([key]) => SAID.test(key)));
  return stringify(
    slim({ scheme: played, findings: findings.flatMap(toShow), language, texts: said }, new Map()),
  );
}

/** The phrases that the program says. */
const SAID =
  /^(?:try|label|port|player|controller|short|mode kind|goes to|starts anew|sets|steps|next value|only while|is|sentence with note|name and value|anyone|the game)\b/;

function toShow({ rule, severity, message, mode, seats, consoles, actions, witness }: Finding) {
  return witness === undefined ? [] : [{ rule, severity, message, mode, seats, consoles, actions, witness }];
}

/** A copy without what is left out; what is one object in two places is one in the copy too. */
function slim(value: unknown, copies: Map<object, unknown>): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const known = copies.get(value);
  if (known !== undefined) return known;
  if (Array.isArray(value)) {
    const list: unknown[] = [];
    copies.set(value, list);
    for (const each of value) list.push(slim(each, copies));
    return list;
  }
  if (value instanceof Map) {
    const map = new Map<unknown, unknown>();
    copies.set(value, map);
    for (const [key, each] of value) map.set(slim(key, copies), slim(each, copies));
    return map;
  }
  const copy: Record<string, unknown> = {};
  copies.set(value, copy);
  for (const [key, each] of Object.entries(value)) if (!LEFT_OUT.has(key)) copy[key] = slim(each, copies);
  return copy;
}
