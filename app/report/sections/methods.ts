import { z } from 'zod';
import { instrumentParts } from '../content/instrument-part.ts';
import { decisionRule } from '../content/lot-conformity.ts';
import { paragraphsOf } from '../content/paragraphs-of.ts';
import { TEXT_KIND_INFO, type TextKind } from '../texts/text-kinds.ts';
import { defineSection } from './section.ts';

export const methodsPart = z.object({
  section: z.literal('methods'),
  /** Instruments used, and whether each was in order on the day. */
  instruments: z.array(z.object({ name: z.string(), methods: z.string(), settings: z.string(), state: z.string() })),
  /** The laboratory's own words: how it works, how uncertainties are to be read, how conformity is decided. */
  texts: z.array(z.object({ title: z.string(), paragraphs: z.array(z.string()) })),
});
export type MethodsPart = z.infer<typeof methodsPart>;

const PRINTED: readonly TextKind[] = ['methods', 'uncertainty', 'decision-rule'];

export const methodsSection = defineSection<MethodsPart>({
  id: 'methods', title: 'Methods and instruments', tells: 'which instrument was used for what, its settings, and whether it was in order on the day',
  clauses: ['7.8.2.1 f', '7.8.3.1 c', '7.8.6'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: methodsPart,
  build: (source) => ({
    section: 'methods', instruments: instrumentParts(source),
    texts: PRINTED.map((kind) => ({ title: TEXT_KIND_INFO[kind].title, paragraphs: kind === 'decision-rule' ? decisionRule(source) : paragraphsOf(source.texts[kind].text) })).filter((text) => text.paragraphs.length > 0),
  }),
  lines: (part) => [...part.texts.map((text) => ({ key: `The text “${text.title}”`, text: text.paragraphs.join('\n') })), ...part.instruments.map((entry) => ({ key: `The instrument “${entry.name}”`, text: [entry.methods, entry.settings, entry.state].filter((text) => text !== '').join('; ') }))],
});
