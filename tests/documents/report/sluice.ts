import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A scheme in which nearly every press means two things. */
export const SLUICE_RUN = readFileSync(fileURLToPath(new URL('sluice-run.md', import.meta.url)), 'utf8');
