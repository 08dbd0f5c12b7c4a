/** Something that wants to be centred at a height but must not overlap its neighbours; all in mm. */
export interface Wish {
  readonly centre: number;
  readonly height: number;
}

interface Cluster {
  /** The top that all its members together want: mean of their own wishes. */
  top: number;
  height: number;
  count: number;
}

/**
 * Tops for pieces in one column: in the order given, at least `gap` apart, and moved from where they want to be
 * by the least sum of squares (pool adjacent violators: neighbours that collide move as one).
 */
export function placeInOrder(wishes: readonly Wish[], gap: number): readonly number[] {
  const clusters: Cluster[] = [];
  for (const { centre, height } of wishes) {
    clusters.push({ top: centre - height / 2, height: height + gap, count: 1 });
    for (;;) {
      const [above, below] = clusters.slice(-2);
      if (above === undefined || below === undefined || above.top + above.height <= below.top) break;
      clusters.splice(-2, 2, joined(above, below));
    }
  }
  return clusters.flatMap(({ top, count }, index) => {
    const before = clusters.slice(0, index).reduce((sum, cluster) => sum + cluster.count, 0);
    return stack(wishes.slice(before, before + count), top, gap);
  });
}

function joined(above: Cluster, below: Cluster): Cluster {
  const count = above.count + below.count;
  return {
    top: (above.top * above.count + (below.top - above.height) * below.count) / count,
    height: above.height + below.height,
    count,
  };
}

function stack(wishes: readonly Wish[], top: number, gap: number): readonly number[] {
  let next = top;
  return wishes.map(({ height }) => {
    const own = next;
    next += height + gap;
    return own;
  });
}
