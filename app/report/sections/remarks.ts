import { z } from 'zod';
import { paragraphsOf } from '../content/paragraphs-of.ts';
import { defineSection } from './section.ts';

export const remarksPart = z.object({ section: z.literal('remarks'), paragraphs: z.array(z.string()) });
export type RemarksPart = z.infer<typeof remarksPart>;

export const remarksSection = defineSection<RemarksPart>({
  id: 'remarks', title: 'Remarks', tells: 'what is written for this report alone',
  clauses: [], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: remarksPart,
  build: ({ writing }) => {
    const paragraphs = paragraphsOf(writing.remarks);
    return paragraphs.length === 0 ? null : { section: 'remarks', paragraphs };
  },
  lines: (part) => [{ key: 'The remarks', text: part.paragraphs.join('\n') }],
});
