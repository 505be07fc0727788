import { z } from 'zod';
import { CUT_WORDS, GIRDLE_WORDS } from '../../weights/cuts.ts';
import { estimateText } from '../../weights/estimate-text.ts';
import { DEPTH_WORDS } from '../../weights/estimate-weight.ts';
import { defineSection } from './section.ts';

export const mountedWeightsPart = z.object({
  section: z.literal('mounted-weights'),
  pieces: z.array(z.object({ item: z.string(), stones: z.array(z.object({ label: z.string(), cut: z.string(), measures: z.string(), rests: z.string(), weight: z.string() })), total: z.string() })),
});
export type MountedWeightsPart = z.infer<typeof mountedWeightsPart>;

export const mountedWeightsSection = defineSection<MountedWeightsPart>({
  id: 'mounted-weights', title: 'Estimated weights of mounted stones', tells: 'weights estimated from measures, with their error, beside what was declared',
  clauses: [], templates: ['piece', 'case', 'single-stone'], usual: true, part: mountedWeightsPart,
  build(source) {
    const labels = new Map(source.case.parcels.flatMap((parcel) => parcel.items).map((item) => [item.id, item.label]));
    const pieces = (source.weights ?? []).flatMap(({ itemId, weights }) => {
      const stones = weights.stones.flatMap(({ label, estimate }) => {
        if (estimate === null) return [];
        const { cut, length, width, depth, depthWay, girdle } = estimate.measures;
        return [{ label, cut: CUT_WORDS[cut], measures: `${length.toFixed(2)} × ${width.toFixed(2)} × ${depth.toFixed(2)} mm`, rests: `depth ${DEPTH_WORDS[depthWay]}; girdle ${GIRDLE_WORDS[girdle]}`, weight: estimateText(estimate) }];
      });
      return stones.length === 0 ? [] : [{ item: labels.get(itemId) ?? '', stones, total: weights.total.sentence }];
    });
    return pieces.length === 0 ? null : { section: 'mounted-weights', pieces };
  },
  lines: (part) => part.pieces.flatMap((piece) => [
    ...piece.stones.map((stone) => ({ key: `The estimated weight of ${stone.label}`, text: stone.weight })), { key: `The total of item ${piece.item}`, text: piece.total },
  ]),
});
