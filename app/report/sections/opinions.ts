import { z } from 'zod';
import { conclusionId } from '../../domain/conclusion.ts';
import { strength, supports } from '../../domain/finding.ts';
import { stoneOpinion } from '../content/stone-opinion.ts';
import { defineSection } from './section.ts';

/** What one finding of the results was taken to say. `finding` is its number in the results of the stone. */
export const findingWeight = z.object({ finding: z.string(), says: z.string(), strength, supports, counts: z.boolean() });

export const opinionsPart = z.object({
  section: z.literal('opinions'),
  stones: z.array(z.object({
    label: z.string(), heading: z.string(),
    conclusion: z.object({
      id: conclusionId, words: z.string(), reasons: z.string(), departure: z.string(), rules: z.string(),
      examiner: z.string(), concludedOn: z.string(), secondPerson: z.string(), confirmedOn: z.string(),
    }).nullable(),
    /** In a draft only: there is a conclusion, and it is not shown to the person who looks. */
    withheld: z.literal(true).optional(),
    weights: z.array(findingWeight),
  })),
});
export type OpinionsPart = z.infer<typeof opinionsPart>;

/** What the examiners conclude, apart from what was measured. */
export const opinionsSection = defineSection<OpinionsPart>({
  id: 'opinions', title: 'Opinions and interpretations', tells: 'what the examiners conclude of each stone, and on which findings it rests',
  clauses: ['7.8.7'], templates: ['single-stone', 'piece', 'lot', 'case'], usual: true, part: opinionsPart,
  build: (source) => ({ section: 'opinions', stones: source.stones.map((entry) => stoneOpinion(source, entry)) }),
  lines: (part) => part.stones.flatMap((stone) => [
    { key: `The opinion on stone ${stone.label}`, text: stone.conclusion?.words ?? 'none recorded' },
    ...(stone.conclusion === null ? [] : [
      { key: `The reasons for stone ${stone.label}`, text: stone.conclusion.reasons },
      { key: `Who concluded on stone ${stone.label}`, text: `${stone.conclusion.examiner}, ${stone.conclusion.concludedOn}` },
      { key: `Who confirmed the opinion on stone ${stone.label}`, text: stone.conclusion.secondPerson === '' ? 'nobody' : `${stone.conclusion.secondPerson}, ${stone.conclusion.confirmedOn}` },
    ]),
    ...stone.weights.map((weight) => ({ key: `What finding ${weight.finding} of stone ${stone.label} was taken to say`, text: weight.says })),
  ]),
});
