import type { NewSealedBundle } from '../../../db/store/sealed-bundles.ts';

/** What is said of a bundle whose bytes are invented: only the store looks at it. */
export const inventedBundle = (id: string, size: number): NewSealedBundle => ({
  id, name: 'invented.zip', verdict: 'unsigned', fingerprint: '', checkedHow: 'invented', size,
  summary: { laboratory: 'Invented Laboratory', demonstration: true, exportedAt: '2026-11-25T09:00:00.000Z', period: null, cases: ['C-2026-0001'], files: 1, reports: 0, rawRecords: 0, ledgers: { custody: 0, audit: 0, walked: 0, checkpoints: 0 } },
});
