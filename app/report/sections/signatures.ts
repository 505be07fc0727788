import { z } from 'zod';
import { ISSUING_PERSON, signaturesOf } from '../content/signatures-of.ts';
import { defineSection } from './section.ts';

export const signaturesPart = z.object({ section: z.literal('signatures'), signatures: z.array(z.object({ role: z.string(), name: z.string(), on: z.string() })) });
export type SignaturesPart = z.infer<typeof signaturesPart>;

export const signaturesSection = defineSection<SignaturesPart>({
  id: 'signatures', title: 'Signatures', tells: 'who examined, who confirmed, who issues',
  clauses: ['7.8.2.1 o'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: signaturesPart,
  build: (source) => ({ section: 'signatures', signatures: signaturesOf(source) }),
  // Every revision is issued and signed anew: who issues it, and on which day, tells nothing of its content.
  lines: (part) => part.signatures.filter((entry) => entry.role !== ISSUING_PERSON).map((entry) => ({ key: `The ${entry.role}`, text: entry.name })),
});
