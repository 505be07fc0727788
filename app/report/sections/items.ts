import { z } from 'zod';
import { itemParts } from '../content/item-part.ts';
import { reportFact } from '../fact.ts';
import { defineSection } from './section.ts';

export const itemsPart = z.object({
  section: z.literal('items'),
  /** That what the client states is not a finding. */
  clientInformation: z.string(),
  items: z.array(z.object({
    label: z.string(), kind: z.string(), facts: z.array(reportFact),
    photographs: z.array(z.object({ caption: z.string(), mediaType: z.string(), base64: z.string(), sha256: z.string() })),
  })),
});
export type ItemsPart = z.infer<typeof itemsPart>;

export const itemsSection = defineSection<ItemsPart>({
  id: 'items', title: 'Items received', tells: 'each item as it was taken in: what the client declared, weight, seal, condition, photographs',
  clauses: ['7.8.2.1 g', '7.8.2.2'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: itemsPart,
  build: (source) => ({ section: 'items', clientInformation: source.texts['client-information'].text, items: itemParts(source) }),
  lines: (part) => part.items.flatMap((item) => [
    ...item.facts.map((fact) => ({ key: `“${fact.label}” of item ${item.label}`, text: fact.value })),
    ...item.photographs.map((photograph) => ({ key: `The photograph ${photograph.sha256.slice(0, 12)}… of item ${item.label}`, text: photograph.caption })),
  ]),
});
