import { z } from 'zod';
import { figureModel } from '../../figure/figure-model.ts';
import { stoneResult } from '../content/stone-result.ts';
import { reportFact } from '../fact.ts';
import { defineSection } from './section.ts';

export const resultFinding = z.object({ no: z.string(), run: z.string(), method: z.string(), statement: z.string(), caution: z.string() });
export const resultFigure = z.object({ heading: z.string(), caption: z.string(), alt: z.string(), figure: figureModel });

export const resultsPart = z.object({
  section: z.literal('results'),
  stones: z.array(z.object({
    label: z.string(), heading: z.string(), facts: z.array(reportFact),
    figures: z.array(resultFigure),
    findings: z.array(resultFinding),
    setAside: z.array(z.object({ statement: z.string(), reason: z.string() })),
    notDone: z.array(z.string()),
  })),
});
export type ResultsPart = z.infer<typeof resultsPart>;

/** What was measured and seen, stone by stone, without saying what it means. */
export const resultsSection = defineSection<ResultsPart>({
  id: 'results', title: 'Results', tells: 'each stone with its spectra, its findings, what was set aside and what was not tested',
  clauses: ['7.8.2.1 g', '7.8.2.1 m'], templates: ['single-stone', 'piece', 'case'], usual: true, part: resultsPart,
  build: (source) => ({ section: 'results', stones: source.stones.map((entry) => stoneResult(source, entry)) }),
  lines: (part) => part.stones.flatMap((stone) => [
    ...stone.facts.map((fact) => ({ key: `“${fact.label}” of stone ${stone.label}`, text: fact.value })),
    ...stone.findings.map((finding) => ({ key: `Finding ${finding.no} of stone ${stone.label}`, text: `${finding.run} ${finding.method}: ${finding.statement}`.trim() })),
    ...stone.setAside.map((entry) => ({ key: `What was set aside for stone ${stone.label}: “${entry.statement}”`, text: entry.reason })),
    ...stone.figures.map((figure) => ({ key: `The figure “${figure.heading}” of stone ${stone.label}`, text: figure.caption })),
    { key: `What was not tested on stone ${stone.label}`, text: stone.notDone.join('; ') },
  ]),
});
