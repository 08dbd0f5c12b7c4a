import { setTimeout as wait } from 'node:timers/promises';

/** How long a test waits for what must come, ms: on a slow machine under load too. */
const PATIENCE_MS = 45_000;

/** Waits until there is something, and gives it: what is there for a moment only is not looked for twice. */
export async function untilThere<T>(find: () => T | null | undefined | false): Promise<T> {
  for (const begun = performance.now(); performance.now() - begun < PATIENCE_MS; await wait(5)) {
    const found = find();
    if (found !== null && found !== undefined && found !== false) return found;
  }
  throw new Error(`waited in vain for ${find}`);
}
