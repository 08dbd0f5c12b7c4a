import type { Fraction } from '../../src/hardware/clocks.js';

/**
 * A scheme as one plain text, to be compared: every place worked out as it is now, every object once and by number
 * where it is met again (rows lead to modes, and modes have rows). Which objects hold one and the same number does
 * not matter.
 */
export function plainText(value: unknown): string {
  const numbers = new Map<object, number>();
  return JSON.stringify(plainOf(value, numbers));
}

function plainOf(value: unknown, numbers: Map<object, number>): unknown {
  if (typeof value === 'bigint') return `${value}n`;
  if (typeof value !== 'object' || value === null) return value;
  if (isPlace(value)) return { file: value.file, range: value.range };
  if (isFraction(value)) return `${value.numerator}/${value.denominator}`;
  const known = numbers.get(value);
  if (known !== undefined) return `#${known}`;
  numbers.set(value, numbers.size);
  if (value instanceof Map) return [...value].map(entry => plainOf(entry, numbers));
  if (Array.isArray(value)) return value.map(item => plainOf(item, numbers));
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plainOf(item, numbers)]));
}

const isFraction = (value: object): value is Fraction => 'numerator' in value && 'denominator' in value;

const isPlace = (value: object): value is { readonly file: unknown; readonly range: unknown } =>
  'file' in value && 'range' in value;
