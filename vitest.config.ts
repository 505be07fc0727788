import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Vitest leaves one core to itself, which idles on a machine of two. Tests that kill programs, or watch one, keep a core free. */
const workers = Math.max(2, availableParallelism() - 1);

export default defineConfig({
  test: {
    // Fixed zone and language: what a person sees must not depend on the machine the tests run on.
    env: { TZ: 'UTC', LANG: 'C.UTF-8' },
    // A shared machine of two cores can be ten times slower than a quiet one; a test that hangs is still found.
    testTimeout: 60_000, hookTimeout: 60_000,
    // A poll's own second is the shortest wait of them all: a drawing on a loaded machine takes longer.
    expect: { poll: { timeout: 30_000 } },
    projects: [
      { extends: true, test: { name: 'unit', include: ['tests/unit/**/*.test.{ts,tsx}'], environment: 'node', maxWorkers: workers } },
      { extends: true, test: { name: 'reference', include: ['tests/reference/**/*.test.ts'], environment: 'node', maxWorkers: workers } },
      { extends: true, test: { name: 'faults', include: ['tests/faults/**/*.test.ts'], environment: 'node' } },
      {
        extends: true,
        test: {
          name: 'e2e', include: ['tests/e2e/**/*.test.ts'], environment: 'node',
          globalSetup: ['tests/e2e/harness/announce-hosts.ts'],
          testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false,
        },
      },
    ],
  },
});
