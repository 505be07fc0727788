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
    ? `would settle it: ${listed(settling.map((reach) => reach.by))}`
    : `adds weight: ${listed(reaches.map((reach) => reach.by))}`;
  return { method, why, score: settling.length * 100 + weight };
}

function rankForIdentity(method: MethodId): Ranked | null {
  const reach = METHOD_REACH[method].find((entry) => entry.supports === 'diamond');
  if (reach === undefined) return null;
  return { method, why: `decides whether it is diamond: ${reach.by}`, score: method === 'raman' ? 2 : 1 };
}

const byScore = (a: Ranked, b: Ranked): number => b.score - a.score || METHOD_IDS.indexOf(a.method) - METHOD_IDS.indexOf(b.method);
const plain = ({ method, why }: Ranked): NextTest => ({ method, why });

/**
 * Tests worth doing, those that would settle most first: each is tried out on the rules with the best it can bring.
 * `candidates` are the methods that are possible for the stone and not yet done. Empty for a settled stone.
 */
export function nextTests(conclusion: ConclusionId, counted: readonly WeighedFinding[], candidates: readonly MethodId[], colourClass: ColourClass): NextTest[] {
  if (SETTLED.has(conclusion) || conclusion === 'not-diamond') return [];
  const ordered = METHOD_IDS.filter((method) => candidates.includes(method));
  if (diamondCheck(counted).state !== 'passed') return ordered.map(rankForIdentity).filter((rank) => rank !== null).sort(byScore).map(plain);
  if (conclusion === 'out-of-scope') return COLOUR_METHODS.filter((method) => ordered.includes(method)).map((method) => ({ method, why: 'needed to judge colour and treatment' }));
  if (colourClass !== 'colourless') return [];
  return ordered.map((method) => rankForOrigin(method, counted, colourClass)).filter((rank) => rank !== null).sort(byScore).map(plain);
}
