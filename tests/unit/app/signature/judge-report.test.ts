import { bytesToHex } from '@noble/hashes/utils.js';
import { expect, test } from 'vitest';
import { judgeReport, type Known } from '../../../../app/signature/judge-report.ts';
import type { ReportCheck } from '../../../../app/signature/report-check.ts';
import { reportVerdict } from '../../../../app/signature/report-verdict.ts';
import type { SignatureFile } from '../../../../app/signature/signature-file.ts';

const publicKey = new Uint8Array(32).fill(5);
const signed: SignatureFile = {
  publicKey, message: new Uint8Array(1), signature: new Uint8Array(64),
  statement: {
    statement: 'culet-report-1', laboratory: 'Saltmarsh', demonstration: false, number: 'S-2026-0088', revision: 2, issuedAt: '2026-11-25T10:15:00.000Z',
    content: { bytes: 1, sha256: 'a'.repeat(64) },
    file: { bytes: 9, sha256: 'b'.repeat(64), signature: { at: 1, bytes: 2 }, attachments: { at: 1, bytes: 3 }, pages: 'c'.repeat(64) },
  },
};
const knowing = (change: Partial<Known['keys'][number]> = {}): Known =>
  ({ keys: [{ publicKey: bytesToHex(publicKey), whose: 'Saltmarsh', own: true, distrust: '', ...change }], standing: (_, own) => (own ? { state: 'superseded', sentence: 'replaced' } : null) });
const nobody: Known = { keys: [], standing: () => null };
const judge = (check: ReportCheck, known: Known) => {
  const judged = judgeReport(check, known);
  reportVerdict.parse({ ...judged, sha256: 'd'.repeat(64), bytes: 9 });
  return judged;
};

test('a sound report is authentic only by a key that is known and trusted', () => {
  const sound: ReportCheck = { kind: 'sound', signed };
  expect(judge(sound, knowing())).toMatchObject({ verdict: 'authentic', standing: { state: 'superseded' }, key: { whose: 'Saltmarsh' }, report: { number: 'S-2026-0088', revision: 2 } });
  expect(judge(sound, knowing({ own: false })).standing).toBeNull();
  // Only the laboratory that issued it knows whether it still counts; whoever checks without its casebook is told to ask.
  expect(judge(sound, knowing({ own: false })).next).toContain('nor that the report still counts: ask the laboratory');
  expect(judge(sound, knowing()).next).not.toContain('still counts');
  expect(judge(sound, nobody)).toMatchObject({ verdict: 'unknown-key', key: { whose: null } });
  expect(judge(sound, knowing({ distrust: 'No longer trusted.' }))).toMatchObject({ verdict: 'unknown-key', key: { whose: 'Saltmarsh', distrust: 'No longer trusted.' } });
});

test('an unknown key says how to get the key, and gives its fingerprint', () => {
  const { next, key } = judge({ kind: 'sound', signed }, nobody);
  expect(next).toMatch(/^Ask the laboratory for the file of its public key/);
  expect(key?.fingerprint).toMatch(/^[0-9a-f]{64}$/);
});

test('a key that was kept under another name than the report’s laboratory is said', () => {
  expect(judge({ kind: 'sound', signed }, knowing({ whose: 'Harbour Laboratory' })).sentence).toContain('signed by Harbour Laboratory; it names the laboratory Saltmarsh');
});

test('an altered file stays altered whatever key it has, and a broken signature vouches for no name', () => {
  const altered = [{ part: 'pages' as const, name: '', sentence: 'The pages changed.' }];
  expect(judge({ kind: 'altered', signed, altered }, knowing())).toMatchObject({ verdict: 'altered', altered, report: { number: 'S-2026-0088' } });
  expect(judge({ kind: 'altered', signed: null, altered }, knowing())).toMatchObject({ verdict: 'altered', report: null, key: null });
});

test('what has no signature is told by its kind', () => {
  for (const kind of ['unsigned', 'draft', 'not-a-report'] as const) expect(judge({ kind }, knowing())).toMatchObject({ verdict: kind, report: null, key: null, altered: [] });
});
