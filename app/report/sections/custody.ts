import { z } from 'zod';
import { custodyParts } from '../content/custody-part.ts';
import { defineSection } from './section.ts';

export const custodyPart = z.object({
  section: z.literal('custody'),
  entries: z.array(z.object({ at: z.string(), item: z.string(), what: z.string(), who: z.string(), weight: z.string(), hash: z.string() })),
});
export type CustodyPart = z.infer<typeof custodyPart>;

export const custodySection = defineSection<CustodyPart>({
  id: 'custody', title: 'Custody log', tells: 'through whose hands the items went, with the digests of the ledger',
  clauses: [], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: custodyPart,
  build: (source) => ({ section: 'custody', entries: custodyParts(source) }),
  lines: (part) => part.entries.map((entry) => ({ key: `The custody entry ${entry.hash.slice(0, 10)}`, text: `${entry.at}, item ${entry.item}: ${entry.what}` })),
});
