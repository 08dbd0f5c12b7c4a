import { readFileSync } from 'node:fs';

/** The package’s own version. */
export function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  const data: unknown = JSON.parse(text);
  const found = typeof data === 'object' && data !== null && 'version' in data ? data.version : null;
  return typeof found === 'string' ? found : '0.0.0';
}
