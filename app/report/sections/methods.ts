import { z } from 'zod';
import { instrumentParts } from '../content/instrument-part.ts';
import { defineSection } from './section.ts';

export const methodsPart = z.object({
  section: z.literal('methods'),
  /** Instruments used, and whether each was in order on the day. */
  instruments: z.array(z.object({ name: z.string(), methods: z.string(), settings: z.string(), state: z.string() })),
});
export type MethodsPart = z.infer<typeof methodsPart>;

export const methodsSection = defineSection<MethodsPart>({
  id: 'methods', title: 'Methods and instruments', tells: 'which instrument was used for what, its settings, and whether it was in order on the day',
  clauses: ['7.8.2.1 f'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: methodsPart,
  build: (source) => ({ section: 'methods', instruments: instrumentParts(source) }),
  lines: (part) => part.instruments.map((entry) => ({ key: `The instrument “${entry.name}”`, text: [entry.methods, entry.settings, entry.state].filter((text) => text !== '').join('; ') })),
});
