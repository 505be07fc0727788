import { z } from 'zod';
import { conductOf } from '../content/conduct-of.ts';
import { reportFact } from '../fact.ts';
import { defineSection } from './section.ts';

export const conductPart = z.object({
  section: z.literal('conduct'),
  /** Place, conditions, sampling, results of others. */
  facts: z.array(reportFact),
  /** Departures from the laboratory's own protocol and rules, a sentence each. */
  departures: z.array(z.string()),
  /** What a report of this kind usually says and this one does not, with the reason. */
  notApplicable: z.array(z.object({ clause: z.string(), what: z.string(), reason: z.string() })),
});
export type ConductPart = z.infer<typeof conductPart>;

export const conductSection = defineSection<ConductPart>({
  id: 'conduct', title: 'Conduct of the work', tells: 'where and under which conditions, sampling, what came from others, and every departure from the protocol',
  clauses: ['7.8.2.1 c', '7.8.2.1 k', '7.8.2.1 n', '7.8.2.1 p', '7.8.3.1 a'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: conductPart,
  build: (source) => ({ section: 'conduct', ...conductOf(source) }),
  lines: (part) => [
    ...part.facts.map((fact) => ({ key: `“${fact.label}”`, text: fact.value })),
    { key: 'The departures', text: part.departures.join(' ') },
    ...part.notApplicable.map((entry) => ({ key: `What does not apply: ${entry.what}`, text: entry.reason })),
  ],
});
