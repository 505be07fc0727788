import { z } from 'zod';
import { conclusionId } from '../../domain/conclusion.ts';
import { leadingFigure } from '../content/leading-figure.ts';
import { reportedConclusion } from '../content/stone-opinion.ts';
import { stoneHeading } from '../content/stone-result.ts';
import { defineSection } from './section.ts';

export const overviewPart = z.object({
  section: z.literal('overview'),
  stones: z.array(z.object({ label: z.string(), heading: z.string(), opinion: z.object({ id: conclusionId, words: z.string() }).nullable(), withheld: z.literal(true).optional() })),
  /** A spectrum of the results that is shown on the first page as well: places in their lists of stones and figures. */
  figure: z.object({ stone: z.number(), figure: z.number() }).nullable(),
});
export type OverviewPart = z.infer<typeof overviewPart>;

/** A table of all stones at the head of a report on several. */
export const overviewSection = defineSection<OverviewPart>({
  id: 'overview', title: 'Overview', tells: 'all stones in one table with their opinions and pages, and one spectrum, where there are several',
  clauses: [], templates: ['piece', 'lot', 'case'], usual: true, part: overviewPart,
  build: (source) => (source.stones.length < 2 ? null : {
    section: 'overview', figure: leadingFigure(source.stones),
    stones: source.stones.map((entry) => {
      const conclusion = reportedConclusion(source, entry);
      return { label: entry.stone.label, heading: stoneHeading(entry.stone), opinion: conclusion === null ? null : { id: conclusion.id, words: conclusion.words }, ...(entry.withheld === true && { withheld: true as const }) };
    }),
  }),
  // What it says stands in the opinions as well, and is told there.
  lines: () => [],
});
