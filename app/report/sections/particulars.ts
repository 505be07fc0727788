import { z } from 'zod';
import { caseParticulars } from '../content/case-particulars.ts';
import { reportFact } from '../fact.ts';
import { defineSection } from './section.ts';

export const particularsPart = z.object({ section: z.literal('particulars'), client: z.array(reportFact), work: z.array(reportFact) });
export type ParticularsPart = z.infer<typeof particularsPart>;

/** For whom, when and how. */
export const particularsSection = defineSection<ParticularsPart>({
  id: 'particulars', title: 'Client and work', tells: 'client, case, what was asked, dates and methods; beside them the stone, where the report is about one',
  clauses: ['7.8.2.1 e', '7.8.2.1 h', '7.8.2.1 i', '7.8.2.1 j'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: particularsPart,
  build: (source) => ({ section: 'particulars', ...caseParticulars(source) }),
  lines: (part) => [...part.client, ...part.work].filter((fact) => fact.label !== 'Issued').map((fact) => ({ key: `“${fact.label}”`, text: fact.value })),
});
