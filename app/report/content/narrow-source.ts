import type { DraftContent } from '../draft/draft-content.ts';
import type { ReportSource } from './report-source.ts';

type Records = Pick<ReportSource, 'case' | 'custody'> & { readonly stones: readonly { readonly stone: { readonly id: string; readonly itemId: string } }[] };

/** The records that belong to what is reported: one stone with its item, one item, or the whole case. Photographs of the case as a whole stay out of narrower reports. */
export function narrowSource<R extends Records>(records: R, subject: DraftContent['subject']): R {
  if (subject.id === null) return records;
  const stones = records.stones.filter(({ stone }) => (subject.kind === 'single-stone' ? stone.id === subject.id : stone.itemId === subject.id));
  const itemId = subject.kind === 'single-stone' ? stones[0]?.stone.itemId : subject.id;
  const kept = new Set(stones.map(({ stone }) => stone.id));
  const parcels = records.case.parcels.map((parcel) => ({
    ...parcel,
    items: parcel.items.filter((item) => item.id === itemId).map((item) => (subject.kind !== 'single-stone' ? item : {
      ...item, stones: item.stones.filter((stone) => kept.has(stone.id)), photographs: item.photographs.filter((photograph) => photograph.stoneId === null || kept.has(photograph.stoneId)),
    })),
  })).filter((parcel) => parcel.items.length > 0);
  return { ...records, stones, custody: records.custody.filter((entry) => entry.itemId === itemId), case: { ...records.case, parcels, photographs: [] } };
}
