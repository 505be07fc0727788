import { TEXT_KIND_INFO, TEXT_KINDS } from '../texts/text-kinds.ts';
import type { ReportSource } from './report-source.ts';

/** A text that a report prints as somebody of the laboratory wrote it, and what it is. */
export type WrittenText = { readonly field: string; readonly text: string };

/**
 * What a report prints in the laboratory's own words beside what was written for it: the texts of the house, and what stands in the records. Left out: what the client states,
 * which is the client's, and reasons and findings, whose words are looked at when they are written.
 */
export function writtenTexts({ case: ofCase, texts, lots = [], maps = [], pictures }: ReportSource): WrittenText[] {
  const items = ofCase.parcels.flatMap((parcel) => parcel.items);
  return [
    ...TEXT_KINDS.map((kind) => ({ field: `text “${TEXT_KIND_INFO[kind].title}” of the house`, text: texts[kind].text })),
    ...items.flatMap((item) => [
      { field: `condition of item ${item.label}`, text: item.condition },
      ...item.photographs.filter((photograph) => pictures.has(photograph.id)).map((photograph) => ({ field: `caption of a photograph of item ${item.label}`, text: photograph.caption })),
      ...item.stones.map((stone) => ({ field: `description of stone ${stone.label}`, text: [stone.shape, stone.position, stone.measurements].join('; ') })),
    ]),
    ...lots.flatMap(({ lot }) => (lot.plan === null ? [] : [{ field: `plan of lot ${lot.label}`, text: `${lot.plan.content.reason}; ${lot.plan.content.method}` }])),
    ...maps.map(({ map }) => ({ field: 'name of a map', text: map.name })),
  ];
}
