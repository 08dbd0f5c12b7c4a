/** Whether two values read from a scheme say the same, wherever they stand (`at`). */
export function saysSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (one instanceof Map || other instanceof Map) return isSameMap(one, other);
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const [mine, others] = [fieldsOf(one), fieldsOf(other)];
  return (
    mine.length === others.length &&
    mine.every(([key, value]) => Object.hasOwn(other, key) && saysSame(value, Reflect.get(other, key)))
  );
}

const fieldsOf = (thing: object): readonly (readonly [string, unknown])[] =>
  Object.keys(thing)
    .filter(key => key !== 'at')
    .map(key => [key, Reflect.get(thing, key)]);

function isSameMap(one: object, other: object): boolean {
  if (!(one instanceof Map && other instanceof Map) || one.size !== other.size) return false;
  return [...one].every(([key, value]) => other.has(key) && saysSame(value, other.get(key)));
}

/** A thing of a scheme that can be told by its name. */
export interface Said {
  readonly name: string;
}

/**
 * What says the same as something of the last reading is that object again, and stands where it stands now.
 *
 * @param fields those in which they may differ: the object of before says them as they are now
 */
export function adopt<T extends Said & object>(
  before: { readonly find: (name: string) => T | undefined },
  now: { readonly all: () => readonly T[]; readonly exchange: (thing: T) => void },
  fields: readonly (keyof T & string)[] = [],
): void {
  const rest = (thing: T) =>
    Object.fromEntries(Object.entries(thing).filter(([key]) => !fields.some(field => field === key)));
  for (const thing of now.all()) {
    const kept = before.find(thing.name);
    if (kept === undefined || !saysSame(rest(kept), rest(thing))) continue;
    takeOver(kept, thing, fields);
    now.exchange(kept);
  }
}

/** Its parts that stand somewhere are the same objects again too: a check may remember one of them. */
function takeOver(kept: object, now: object, fields: readonly string[]): void {
  for (const [key, value] of Object.entries(now)) {
    const before: unknown = Reflect.get(kept, key);
    if (!fields.includes(key) && isPlaced(before) && isPlaced(value)) takeOver(before, value, []);
    else Reflect.set(kept, key, value);
  }
}

const isPlaced = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, 'at');
