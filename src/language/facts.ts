import type { List, ListItem } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { bareText } from './bare-text.js';
import { type Block, placeOfBlock } from './document.js';
import { badPlace, badValue, type Spot, unknownName } from './faults.js';
import { normal } from './spelling.js';
import { isSilent, readWords, sliceWords, type Words } from './words.js';

/** The facts of a section by key, each with the words of its value. */
export type Facts = ReadonlyMap<string, Words>;

/** Reads every list of facts (`- Key: value`) among the blocks; other lists are prose. */
export function readFacts(blocks: readonly Block[], keys: readonly string[], spot: Spot): Facts {
  const facts = new Map<string, Words>();
  for (const block of blocks) {
    if (block.node.type !== 'list' || !isFactList(block.node, keys)) continue;
    for (const item of block.node.children) readFact(item, block, keys, facts, spot);
  }
  return facts;
}

/** At least one item is written as a fact, or is a key and one word whose colon was forgotten. */
export function isFactList(list: List, keys: readonly string[]): boolean {
  return list.children.some(item => isFact(item, keys) || lacksColon(item, keys));
}

/** What stands, or was meant to stand, between a key and its value. */
const SIGN = /\s*[:：=]\s*|\s+[-–—]\s+/;

/** Most words of a key: what says more before its colon is a sentence. */
const MOST_KEY_WORDS = 3;

/** `Key: value`, with a key of the language or one that could be meant as one; what is nested in the item is prose. */
function isFact({ children: [paragraph, ...nested] }: ListItem, keys: readonly string[]): boolean {
  if (paragraph?.type !== 'paragraph') return false;
  const [known = '', ...said] = textOf(paragraph).split(SIGN);
  if (said.length > 0 && isOneOf(known, keys)) return true;
  const [, lead = '', value = ''] = /^([^:\n]*[^:\n\d]):(?=\s|$)(.*)$/s.exec(bareText(paragraph)) ?? [];
  if (value.trim() === '' && nested.length > 0) return false;
  const key = lead.trim();
  return key !== '' && key.split(/\s+/).length <= MOST_KEY_WORDS;
}

function lacksColon({ children: [paragraph] }: ListItem, keys: readonly string[]): boolean {
  const [first = '', ...rest] = paragraph?.type === 'paragraph' ? textOf(paragraph).trim().split(/\s+/) : [];
  return rest.length === 1 && isOneOf(first, keys);
}

const isOneOf = (text: string, keys: readonly string[]): boolean =>
  keys.some(key => normal(key) === normal(text));

function readFact(
  item: ListItem,
  block: Block,
  keys: readonly string[],
  facts: Map<string, Words>,
  spot: Spot,
): void {
  const [paragraph, ...others] = item.children;
  if (paragraph?.type !== 'paragraph') {
    notAFact(item, block, keys, spot);
    return;
  }
  for (const node of others) notAFact(node, block, keys, spot);
  const words = readWords(paragraph, block.part, false);
  const colon = words.text.indexOf(':');
  if (colon < 0 || !isFact(item, keys)) {
    notAFact(item, block, keys, spot, meantFact(words.text, keys));
    return;
  }
  const name = sliceWords(words, 0, colon);
  const key = keys.find(candidate => normal(candidate) === normal(name.text));
  if (key === undefined) {
    const remark = 'If it is a remark for readers, write it as a paragraph.';
    unknownName(spot, name, 'key', keys, remark);
    return;
  }
  const first = facts.get(key);
  if (first !== undefined) {
    badValue(spot, name, key, 'this is said twice, and only the first is read', ['Take one of the two out.']);
    return;
  }
  const table = words.text.search(/\n\s*\|/);
  const value = sliceWords(words, colon + 1, table < 0 ? undefined : table);
  if (!isSilent(value)) facts.set(key, value);
}

function notAFact(
  node: ListItem | ListItem['children'][number],
  block: Block,
  keys: readonly string[],
  spot: Spot,
  meant: string | null = null,
): void {
  const at = placeOfBlock({ node, part: block.part });
  badPlace(spot, at, `Facts${spot.of}`, 'this is not a fact of the form `Key: value`', [
    ...(meant === null ? [] : [`Write \`- ${meant}\`.`]),
    `Write ${keys.map(key => `\`${key}: …\``).join(' or ')}; a table after the list needs a blank line before it.`,
  ]);
}

/** `Kind：play`, `Kind = play`, `Kind play`: a fact with another sign than the colon, or none. */
function meantFact(text: string, keys: readonly string[]): string | null {
  const [first = '', ...rest] = text.split(SIGN.test(text) ? SIGN : /\s+/);
  const key = keys.find(candidate => normal(candidate) === normal(first));
  const value = rest.join(' ').trim();
  return key === undefined || value === '' ? null : `${key}: ${value}`;
}
