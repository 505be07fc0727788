import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { StoredReport } from '../../db/store/reports.ts';
import { notFound } from './failures.ts';
import { sha256 } from './issue-report.ts';
import type { Work } from './work-context.ts';

/** The pages of an issued report, as they may be given out: refused where they, or the digest beside them, are not those that the audit ledger wrote down. */
export async function issuedPages(reportId: string, { stores }: Pick<Work, 'stores'>): Promise<Result<StoredReport, Failure>> {
  const stored = await stores.reports.content(reportId);
  if (stored === null) return notFound('This report');
  if (sha256(stored.pdf) !== stored.pdfSha256 || stored.pdfSha256 !== stored.ledgerSha256) {
    return err({ code: 'unreadable', message: `The stored pages of ${stored.name} no longer have the digest they were issued with.`, next: 'Do not hand them out. Verify the casebook, and restore a backup in which it is sound.' });
  }
  return ok(stored);
}
