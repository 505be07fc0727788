import type { ColourClass } from '../domain/colour-class.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { decide } from './decide.ts';
import { METHOD_REACH } from './method-reach.ts';
import type { Reach } from './method-reach.ts';
import type { Proposal } from './proposal.ts';
import { diamondCheck } from './rules/diamond-check.ts';
import { listed } from './sentences.ts';
import type { WeighedFinding } from './weighed-finding.ts';

type NextTest = Proposal['nextTests'][number];
type Ranked = NextTest & { readonly score: number };

const SETTLED: ReadonlySet<ConclusionId> = new Set(['natural', 'grown-cvd', 'grown-hpht']);
/** What coloured stones need first; the rest of the list does not tell the origin of colour. */
const COLOUR_METHODS: readonly MethodId[] = ['absorption', 'infrared', 'photoluminescence'];

const imagined = (method: MethodId, reach: Reach): WeighedFinding =>
  ({ id: '', code: `imagined:${method}:${reach.supports}`, statement: reach.by, strength: reach.strength, supports: reach.supports, method, counts: true, state: 'proposed', run: null });

/** Heaviest first, as decide expects; a finding that is not there yet takes its place among its equals. */
const withFinding = (counted: readonly WeighedFinding[], finding: WeighedFinding): WeighedFinding[] => {
  const order = { diagnostic: 0, strong: 1, supporting: 2, neutral: 3 } as const;
  return [...counted, finding].sort((a, b) => order[a.strength] - order[b.strength]);
};

/** For each answer the method can give: would one such finding settle the stone? */
function rankForOrigin(method: MethodId, counted: readonly WeighedFinding[], colourClass: ColourClass): Ranked | null {
  const reaches = METHOD_REACH[method].filter((reach) => reach.supports !== 'diamond');
  if (reaches.length === 0) return null;
  const settling = reaches.filter((reach) => SETTLED.has(decide(withFinding(counted, imagined(method, reach)), colourClass).conclusion));
  const weight = reaches.reduce((sum, reach) => sum + (reach.strength === 'strong' ? 2 : 1), 0);
  const why = settling.length > 0
    ? `would settle it: ${listed(settling.map((reach) => reach.by), 'or')}`
    : `adds weight: ${listed(reaches.map((reach) => reach.by), 'or')}`;
  return { method, why, score: settling.length * 100 + weight };
}

/** A check that has not passed may be repeated under other conditions; a method not used yet goes before. */
function rankForIdentity(method: MethodId, isDone: boolean): Ranked | null {
  const reach = METHOD_REACH[method].find((entry) => entry.supports === 'diamond');
  if (reach === undefined) return null;
  const again = isDone ? 'again, on this stone alone, with another laser or less light: ' : '';
  return { method, why: `${again}decides whether it is diamond: ${reach.by}`, score: (isDone ? 0 : 10) + (method === 'raman' ? 2 : 1) };
}

const byScore = (a: Ranked, b: Ranked): number => b.score - a.score || METHOD_IDS.indexOf(a.method) - METHOD_IDS.indexOf(b.method);
const plain = ({ method, why }: Ranked): NextTest => ({ method, why });

/**
 * Tests worth doing, those that would settle most first: each is tried out on the rules with the best it can bring.
 * `possible` are the methods that the stone allows and the laboratory has, `done` those already used. Empty for a settled stone.
 */
export function nextTests(conclusion: ConclusionId, counted: readonly WeighedFinding[], possible: readonly MethodId[], done: ReadonlySet<MethodId>, colourClass: ColourClass): NextTest[] {
  if (SETTLED.has(conclusion) || conclusion === 'not-diamond') return [];
  const ranked = (ranks: readonly (Ranked | null)[]): NextTest[] => ranks.filter((rank) => rank !== null).sort(byScore).map(plain);
  if (diamondCheck(counted).state !== 'passed') return ranked(possible.map((method) => rankForIdentity(method, done.has(method))));
  const fresh = possible.filter((method) => !done.has(method));
  if (conclusion === 'out-of-scope') return COLOUR_METHODS.filter((method) => fresh.includes(method)).map((method) => ({ method, why: 'needed to judge colour and treatment' }));
  return colourClass === 'colourless' ? ranked(fresh.map((method) => rankForOrigin(method, counted, colourClass))) : [];
}
