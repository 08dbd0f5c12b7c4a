/**
 * Remembers results by what they depend on: objects by identity, everything else by value. A result is forgotten
 * when one of the objects it depends on is: so objects that never go away should stand last.
 */
export type Memory<T> = (dependsOn: readonly unknown[], work: () => T) => T;

export function createMemory<T>(): Memory<T> {
  const root = createNode<T>();
  return (dependsOn, work) => {
    let node = root;
    for (const key of dependsOn) node = childOf(node, key);
    node.result ??= { value: work() };
    return node.result.value;
  };
}

interface Node<T> {
  readonly byObject: WeakMap<object, Node<T>>;
  readonly byValue: Map<unknown, Node<T>>;
  result: { readonly value: T } | null;
}

const createNode = <T>(): Node<T> => ({ byObject: new WeakMap(), byValue: new Map(), result: null });

function childOf<T>(node: Node<T>, key: unknown): Node<T> {
  const isObject = (typeof key === 'object' && key !== null) || typeof key === 'function';
  const known = isObject ? node.byObject.get(key) : node.byValue.get(key);
  if (known !== undefined) return known;
  const child = createNode<T>();
  if (isObject) node.byObject.set(key, child);
  else node.byValue.set(key, child);
  return child;
}
