import { stringify } from 'devalue';
import type { Finding } from '../../findings/finding.js';
import type { Scheme } from '../../language/model.js';

/** What only checks and documents need of each thing: where it stands and what it is known from. */
const LEFT_OUT: ReadonlySet<string> = new Set(['at', 'prose', 'sources', 'source']);

/**
 * What the page plays as text, from which `parse` of devalue makes it again with what is shared shared: an object with
 * `scheme`, and `findings` that have a witness.
 */
export function writePageData(scheme: Scheme, findings: readonly Finding[]): string {
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
  return stringify(slim({ scheme: played, findings: findings.flatMap(toShow) }, new Map()));
}

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
