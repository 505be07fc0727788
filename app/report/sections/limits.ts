import { z } from 'zod';
import { paragraphsOf } from '../content/paragraphs-of.ts';
import { defineSection } from './section.ts';

export const limitsPart = z.object({ section: z.literal('limits'), scope: z.string(), limits: z.array(z.string()), disclaimer: z.array(z.string()) });
export type LimitsPart = z.infer<typeof limitsPart>;

export const limitsSection = defineSection<LimitsPart>({
  id: 'limits', title: 'Scope and limits', tells: 'the laboratory’s own words on what the screening covers and what it can’t say',
  clauses: ['7.8.2.1 l'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: limitsPart,
  build: ({ texts }) => ({ section: 'limits', scope: texts.scope.text, limits: paragraphsOf(texts.limits.text), disclaimer: paragraphsOf(texts.disclaimer.text) }),
  lines: (part) => [{ key: 'The text on the scope', text: part.scope }, { key: 'The text on the limits', text: part.limits.join('\n') }, { key: 'The disclaimer', text: part.disclaimer.join('\n') }],
});
