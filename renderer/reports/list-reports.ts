import type { ReportRow } from '../../app/contract/report-row.ts';

export type Shown = 'all' | 'issued' | 'withdrawn';

/** A revision in the list; `older` where a later one of the same number stands above it. */
export type ListedReport = ReportRow & { readonly older: boolean };

const collator = new Intl.Collator('en', { numeric: true });

/** Reports that fit the words and the state, newest number first, the revisions of a number together with the newest on top. */
export function listReports(reports: readonly ReportRow[], text: string, shown: Shown): ListedReport[] {
  const words = text.toLocaleLowerCase('en').split(/\s+/).filter(Boolean);
  const fits = (report: ReportRow) => {
    const about = [report.number, report.caseNumber, report.clientName, report.subject, report.issuedBy].join(' ').toLocaleLowerCase('en');
    return (shown === 'all' || report.state === shown) && words.every((word) => about.includes(word));
  };
  return reports.filter(fits)
    .toSorted((a, b) => collator.compare(b.number, a.number) || b.revision - a.revision)
    .map((report, index, list) => ({ ...report, older: list[index - 1]?.number === report.number }));
}
