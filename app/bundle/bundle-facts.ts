import { z } from 'zod';
import { digest, instant } from '../contract/common.ts';
import type { AuditDocument, CheckpointsDocument, IndexDocument } from './bundle-documents.ts';
import type { CaseDocument, CustodyDocument } from './case-document.ts';

const head = z.object({ seq: z.number(), hash: digest });
/** Number and digest of an entry of a ledger. */
const entry = z.tuple([z.number(), digest]);

/** What of a bundle can be held against another one of the same laboratory. Made from the bundle, and made anew where it is missing. */
export const bundleFacts = z.object({
  laboratory: z.string(), exportedAt: instant,
  /** Public keys that the bundle names as the laboratory's own, hexadecimal digits. */
  keys: z.array(digest),
  ledgers: z.object({ custody: z.object({ from: z.number(), head }), audit: z.object({ from: z.number(), head }) }),
  checkpoints: z.array(z.object({ at: instant, custody: head, audit: head })),
  cases: z.array(z.object({ number: z.string(), id: z.string(), custody: z.array(entry), audit: z.array(entry) })),
  reports: z.array(z.object({ number: z.string(), revision: z.number(), case: z.string(), sha256: digest })),
  rawRecords: z.array(z.object({ id: z.string(), name: z.string(), case: z.string(), sha256: digest })),
});
export type BundleFacts = z.infer<typeof bundleFacts>;

type CaseFacts = Pick<BundleFacts, 'reports' | 'rawRecords'> & { readonly case: BundleFacts['cases'][number] };

const entries = ({ entries: all }: CustodyDocument | AuditDocument): [number, string][] => all.map(({ statement, hash }) => [statement.seq, hash]);

export function caseFacts(document: CaseDocument, custody: CustodyDocument, audit: AuditDocument): CaseFacts {
  const { number, id } = document.case;
  return {
    case: { number, id, custody: entries(custody), audit: entries(audit) },
    reports: document.reports.map((one) => ({ number: one.number, revision: one.revision, case: number, sha256: one.pdfSha256 })),
    rawRecords: document.rawRecords.map(({ id: record, name, sha256 }) => ({ id: record, name, case: number, sha256 })),
  };
}

export function factsOf(index: IndexDocument, { checkpoints }: CheckpointsDocument, cases: readonly CaseFacts[]): BundleFacts {
  const { custody, audit } = index.ledgers;
  return {
    laboratory: index.laboratory.name, exportedAt: index.exportedAt, keys: index.keys.map(({ publicKey }) => publicKey),
    ledgers: { custody: { from: custody.from, head: custody.head }, audit: { from: audit.from, head: audit.head } },
    checkpoints: checkpoints.map(({ statement }) => ({ at: statement.at, custody: statement.custody, audit: statement.audit })),
    cases: cases.map((one) => one.case), reports: cases.flatMap((one) => one.reports), rawRecords: cases.flatMap((one) => one.rawRecords),
  };
}
