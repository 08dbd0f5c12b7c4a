/**
 * Remembers results by what they depend on, compared by identity. The first is an object; when it is forgotten, so
 * are the results that depend on it.
 */
export type Memory<T> = (dependsOn: readonly unknown[], work: () => T) => T;

interface Remembered<T> {
  readonly dependsOn: readonly unknown[];
  readonly result: T;
}

/** @param most results kept for one first object; more than that, and the oldest go */
export function createMemory<T>(most = 256): Memory<T> {
  const byFirst = new WeakMap<object, Remembered<T>[]>();
  return (dependsOn, work) => {
    const [first] = dependsOn;
    if (typeof first !== 'object' || first === null) return work();
    const known = byFirst.get(first);
    const found = known?.find(each => isSameList(each.dependsOn, dependsOn));
    if (found !== undefined) return found.result;
    const result = work();
    if (known === undefined) byFirst.set(first, [{ dependsOn, result }]);
    else {
      known.push({ dependsOn, result });
      if (known.length > most) known.shift();
    }
    return result;
  };
}

/** Whether two lists have the same items in the same order. */
export function isSameList(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false;
  return true;
}
