import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const GOLDENS = fileURLToPath(new URL('../goldens', import.meta.url));

/** Compares with the file `tests/goldens/NAME`, which must be there; `npm run goldens` writes it anew. */
export function expectGolden(name: string, text: string): void {
  const path = join(GOLDENS, name);
  if (process.env['LEVERLEAF_UPDATE_GOLDENS'] === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(existsSync(path), `${name} is missing: npm run goldens writes it`).toBe(true);
  expect(text).toBe(readFileSync(path, 'utf8'));
}
