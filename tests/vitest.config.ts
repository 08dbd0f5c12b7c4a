import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: ['default', fileURLToPath(new URL('support/summary-reporter.ts', import.meta.url))],
  },
});
