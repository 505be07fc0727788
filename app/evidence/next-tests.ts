import type { ColourClass } from '../domain/colour-class.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { expectedSeparation } from './expected-separation.ts';
import { IDENTITY_TESTS, METHOD_OUTCOMES } from './method-outcomes.ts';
import type { Proposal } from './proposal.ts';
import { diamondCheck } from './rules/diamond-check.ts';
import { treatmentSuspicion } from './rules/treatment-suspicion.ts';
import { listed } from './sentences.ts';
import { TEST_CAUTIONS } from './test-cautions.ts';
import type { WeighedFinding } from './weighed-finding.ts';

type NextTest = Proposal['nextTests'][number];
type Ranked = { readonly method: MethodId; readonly why: string; readonly score: number; readonly settles?: number; readonly bits?: number };

const SETTLED: ReadonlySet<ConclusionId> = new Set(['natural', 'grown-cvd', 'grown-hpht', 'not-diamond']);
/** What coloured and treated stones need first; the rest of the list does not tell the origin of colour. */
const TREATMENT_METHODS: readonly MethodId[] = ['photoluminescence', 'infrared', 'absorption'];
const COLOUR_METHODS: readonly MethodId[] = ['absorption', 'infrared', 'photoluminescence'];

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

function rankForOrigin(method: MethodId, counted: readonly WeighedFinding[], colourClass: ColourClass): Ranked | null {
  if (METHOD_OUTCOMES[method].length === 0) return null;
  const { settles, bits, settling, brings } = expectedSeparation(method, counted, colourClass);
  if (brings.length === 0) return null;
  const why = settling.length > 0 ? `would settle it: ${listed(settling, 'or')}` : `adds weight: ${listed(brings, 'or')}`;
  return { method, why, score: settles * 100 + bits, settles: rounded(settles), bits: rounded(bits) };
}

/** For a stone two persons disagree on: a further witness, the one that parts the hypotheses best. */
function rankAsWitness(method: MethodId, counted: readonly WeighedFinding[], colourClass: ColourClass): Ranked | null {
  if (METHOD_OUTCOMES[method].length === 0) return null;
  const { bits, brings } = expectedSeparation(method, counted, colourClass);
  return brings.length === 0 ? null : { method, why: `a further witness: ${listed(brings, 'or')}`, score: bits, bits: rounded(bits) };
}

/** A check that has not passed may be repeated under other conditions; a method not used yet goes before. */
function rankForIdentity(method: MethodId, isDone: boolean): Ranked | null {
  const by = IDENTITY_TESTS[method];
  if (by === undefined) return null;
  const again = isDone ? 'again, on this stone alone, with another laser or less light: ' : '';
  return { method, why: `${again}decides whether it is diamond: ${by}`, score: (isDone ? 0 : 10) + (method === 'raman' ? 2 : 1) };
}

const byScore = (a: Ranked, b: Ranked): number => b.score - a.score || METHOD_IDS.indexOf(a.method) - METHOD_IDS.indexOf(b.method);
const ranked = (ranks: readonly (Ranked | null)[]): NextTest[] => ranks.filter((rank) => rank !== null).sort(byScore)
  .map(({ method, why, settles, bits }) => ({ method, why, caution: TEST_CAUTIONS[method], ...(settles === undefined ? {} : { settles, bits }) }));
const named = (methods: readonly MethodId[], possible: readonly MethodId[], why: string): NextTest[] =>
  methods.filter((method) => possible.includes(method)).map((method) => ({ method, why, caution: TEST_CAUTIONS[method] }));

/**
 * Tests worth doing, those that would settle most first: the chance that the rules settle the stone afterwards, then the expected loss
 * of doubt between the remaining hypotheses. `possible` are the methods that the stone allows and the laboratory has, `done` those
 * already used. Empty for a settled stone, unless a line of treatment left a question
 * or two persons disagree on it.
 */
export function nextTests(conclusion: ConclusionId, counted: readonly WeighedFinding[], possible: readonly MethodId[], done: ReadonlySet<MethodId>, colourClass: ColourClass, disputed = false): NextTest[] {
  if (conclusion === 'natural' && treatmentSuspicion(counted).state === 'question') return named(TREATMENT_METHODS, possible, 'answers the question of treatment: the line again, with a better signal, the stone cooled');
  if (SETTLED.has(conclusion)) return disputed ? ranked(possible.filter((method) => !done.has(method)).map((method) => rankAsWitness(method, counted, colourClass))) : [];
  if (diamondCheck(counted).state !== 'passed') return ranked(possible.map((method) => rankForIdentity(method, done.has(method))));
  const fresh = possible.filter((method) => !done.has(method));
  if (conclusion === 'out-of-scope') return named(COLOUR_METHODS, fresh, 'needed to judge colour and treatment');
  return colourClass === 'colourless' ? ranked(fresh.map((method) => rankForOrigin(method, counted, colourClass))) : [];
}
