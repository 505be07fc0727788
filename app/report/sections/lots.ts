import { z } from 'zod';
import { lotText } from '../content/lot-part.ts';
import { defineSection } from './section.ts';

const sized = { count: z.string(), weight: z.string() };

export const lotsPart = z.object({
  section: z.literal('lots'),
  lots: z.array(z.object({
    label: z.string(), heading: z.string(), facts: z.array(z.object({ label: z.string(), value: z.string(), mono: z.boolean() })),
    sampling: z.array(z.string()), outcomes: z.array(z.object({ words: z.string(), count: z.number() })), statement: z.array(z.string()), remarks: z.array(z.string()),
    sizes: z.array(z.object({ size: z.string(), ...sized })), parts: z.array(z.object({ part: z.string(), ...sized })), balance: z.array(z.string()),
    named: z.array(z.object({ words: z.string(), numbers: z.string() })),
  })),
});
export type LotsPart = z.infer<typeof lotsPart>;

export const lotsSection = defineSection<LotsPart>({
  id: 'lots', title: 'Lots of small stones', tells: 'how a sample was drawn, what it showed, and the exact limits for the untested stones',
  clauses: ['7.8.2.1 k', '7.8.2.1 m'], templates: ['lot', 'case'], usual: true, part: lotsPart,
  build(source) {
    const lots = (source.lots ?? []).flatMap((lot) => lotText(lot, source.laboratory) ?? []);
    return lots.length === 0 ? null : { section: 'lots', lots };
  },
  lines: (part) => part.lots.flatMap((lot) => [
    { key: `The statement on lot ${lot.label}`, text: lot.statement.join(' ') },
    { key: `The sampling of lot ${lot.label}`, text: lot.sampling.join(' ') },
    { key: `The parts of lot ${lot.label}`, text: lot.parts.map((one) => `${one.part}: ${one.count}, ${one.weight}`).join('; ') },
  ]),
});
