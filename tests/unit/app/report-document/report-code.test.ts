import { expect, test } from 'vitest';
import { reportCodeText } from '../../../../app/report-document/report-code.ts';

test('the code says number, revision, day and digest in plain text', () => {
  expect(reportCodeText({ number: 'S-2026-0088', revision: 2, issuedOn: '2026-11-25', digest: 'ab'.repeat(32) }))
    .toBe(`S-2026-0088 revision 2, issued 2026-11-25, SHA-256 ${'ab'.repeat(32)}`);
});
