import { z } from 'zod';
import { colourClass } from '../domain/colour-class.ts';
import { strength, supports } from '../domain/finding.ts';
import type { FindingFact } from '../domain/finding.ts';
import { METHOD_IDS, methodId } from '../domain/method.ts';
import { observation } from '../domain/observation.ts';
import type { Observation } from '../domain/observation.ts';
import { runWarnings } from '../runs/run-warnings.ts';
import { isOwnWords } from './evidence-table.ts';
import { factOfCode, methodOfCode } from './fact-of-code.ts';
import { findingsFromObservation } from './findings-from-observation.ts';
import { isBarred } from './possible-methods.ts';
import { proposeConclusion } from './propose-conclusion.ts';
import type { Proposal } from './proposal.ts';
import type { WeighedFinding } from './weighed-finding.ts';

const findingInput = z.strictObject({
  code: z.string().min(1).max(80),
  /** Left out: the method that usually brings this code. */
  method: methodId.optional(),
  /** Left out: what the evidence table gives this code. */
  strength: strength.optional(), supports: supports.optional(), statement: z.string().min(1).max(600).optional(),
  /** As `culet analyse --json` gives them. */
  caution: z.string().max(400).optional(), source: z.string().max(300).optional(),
  id: z.string().min(1).max(60).optional(),
  /** False where the instrument was not in order on the day. */
  counts: z.boolean().default(true),
  setAside: z.boolean().default(false),
  run: z.string().max(20).nullable().default(null),
});

const observationInput = z.object({
  /** UTC, ISO 8601: lets the order of exposures be judged by the clock. */
  at: z.string().optional(), counts: z.boolean().default(true), run: z.string().max(20).nullable().default(null),
}).and(observation);

/** What `culet conclude` reads. Described in docs/command-line.md. */
export const concludeDocument = z.strictObject({
  stone: z.strictObject({
    mounted: z.boolean(), setting: z.enum(['open-back', 'closed-back']).nullable().default(null), colourClass,
    weightCt: z.number().positive().max(10_000).nullable().default(null),
  }),
  findings: z.array(findingInput).max(500).default([]),
  /** In the order in which they were made. */
  observations: z.array(observationInput).max(200).default([]),
  /** Methods used beside those of the findings and observations. */
  methodsDone: z.array(methodId).default([]),
  /** Left out: every method. */
  methodsAvailable: z.array(methodId).default([...METHOD_IDS]),
  protocol: z.strictObject({ name: z.string().min(1).max(120), asks: z.array(methodId).min(1) }).optional(),
});
export type ConcludeDocument = z.output<typeof concludeDocument>;

export type ConcludeOutcome = { readonly proposal: Proposal; readonly warnings: readonly { readonly code: string; readonly message: string }[] };

function statedFinding({ code, method, statement, ...stated }: ConcludeDocument['findings'][number], index: number): WeighedFinding {
  const from = method ?? methodOfCode(code) ?? 'microscopy';
  const known = factOfCode(code, from);
  const base: FindingFact = known ?? { code, statement: code, method: from, strength: isOwnWords(code) ? stated.strength ?? 'neutral' : 'neutral', supports: isOwnWords(code) ? stated.supports ?? 'none' : 'none' };
  return {
    ...base, statement: statement ?? base.statement, strength: stated.strength ?? base.strength, supports: stated.supports ?? base.supports,
    ...(stated.caution === undefined ? {} : { caution: stated.caution }), ...(stated.source === undefined ? {} : { source: stated.source }),
    id: stated.id ?? `finding-${index + 1}`, counts: stated.counts, state: stated.setAside ? 'set-aside' : 'accepted', run: stated.run,
  };
}

function observedFindings(document: ConcludeDocument): WeighedFinding[] {
  const { colourClass: colour, mounted } = document.stone;
  return document.observations.flatMap((seen, i) => {
    const others: Observation[] = document.observations.slice(0, i).filter((other) => other.counts);
    return findingsFromObservation(seen, { colourClass: colour, mounted, others }).map((fact, k): WeighedFinding => ({ ...fact, id: `observation-${i + 1}.${k + 1}`, counts: seen.counts, state: 'accepted', run: seen.run }));
  });
}

/** Exposures in the wrong order. Without times, the order of the list is taken and neighbours are taken as minutes apart. */
function orderWarnings({ observations }: ConcludeDocument): ConcludeOutcome['warnings'] {
  const base = Date.UTC(2000, 0, 1);
  const runs = observations.map((seen, i) => ({ number: seen.run ?? `observation ${i + 1}`, method: seen.method, at: seen.at ?? new Date(base + i * 60_000).toISOString(), observation: seen }));
  return runs.flatMap((run) => runWarnings(run, 'no-instrument', runs).filter((warning) => warning.code === 'short-wave-first'));
}

/** The proposal for a stone described in a document. The same document always gives the same proposal. */
export function concludeFromDocument(document: ConcludeDocument): ConcludeOutcome {
  const { stone, methodsAvailable, protocol } = document;
  const findings = [...document.findings.map(statedFinding), ...observedFindings(document)].map((finding) => (isBarred(finding.method, stone) ? { ...finding, barred: true } : finding));
  return {
    proposal: proposeConclusion({ stone, findings, methodsDone: [...new Set([...document.methodsDone, ...findings.map((finding) => finding.method)])], methodsAvailable, ...(protocol === undefined ? {} : { protocol }) }),
    warnings: orderWarnings(document),
  };
}
