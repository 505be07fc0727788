import type { CaseDocument } from './case-document.ts';

/** What of a case in a bundle can be found by the search, each part with the texts that stand in it. */
export const CASE_WORD_PARTS = ['question', 'remark', 'parcel', 'item', 'stone', 'conclusion', 'reason', 'answer', 'finding', 'note', 'report', 'file'] as const;
export type CaseWordPart = (typeof CASE_WORD_PARTS)[number];
export type CaseWords = Readonly<Record<CaseWordPart, readonly string[]>>;

const filled = (texts: readonly string[]): string[] => [...new Set(texts.map((text) => text.trim()).filter((text) => text !== ''))];

/** `conclusion` holds the conclusions' ids: whoever shows them knows their words. */
export function caseWords({ case: record, stones, reports, rawRecords, lots }: CaseDocument): CaseWords {
  const items = record.parcels.flatMap((parcel) => parcel.items);
  const conclusions = stones.flatMap((one) => one.conclusions);
  return {
    question: filled([record.asks]),
    remark: filled([record.remarks]),
    parcel: filled(record.parcels.map((parcel) => `${parcel.sealNumber} ${parcel.remarks}`)),
    item: filled(items.map((item) => `${item.label} ${item.declared} ${item.declaredValue} ${item.condition}`)),
    stone: filled(stones.map(({ stone }) => `${record.number} ${stone.label} ${stone.shape} ${stone.position} ${stone.measurements}`)),
    conclusion: filled(conclusions.map((one) => one.conclusion)),
    reason: filled(conclusions.map((one) => `${one.reasons} ${one.departure}`)),
    answer: filled(conclusions.map((one) => one.confirmation?.reason ?? '')),
    finding: filled([...stones.flatMap((one) => one.findings.filter((finding) => finding.state !== 'replaced').map((finding) => finding.statement)), ...(lots ?? []).flatMap((lot) => lot.statement)]),
    note: filled(stones.flatMap((one) => one.runs.map((run) => run.note))),
    report: filled(reports.map((one) => one.number)),
    file: filled(rawRecords.map((one) => one.name)),
  };
}
