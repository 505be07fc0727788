import type { ConclusionId } from '../domain/conclusion.ts';
import type { FindingFact } from '../domain/finding.ts';
import { METHOD_IDS } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { decide } from '../evidence/decide.ts';
import { isPossible } from '../evidence/possible-methods.ts';
import type { StoneSetting } from '../evidence/possible-methods.ts';
import { readFindings } from '../evidence/read-findings.ts';
import type { WeighedFinding } from '../evidence/weighed-finding.ts';
import { seededRandom } from '../spectra/simulate/seeded-random.ts';
import type { SeededRandom } from '../spectra/simulate/seeded-random.ts';
import { chance, draw, some } from './draw.ts';
import type { EvaluatedKind, Weighted } from './evaluated-kind.ts';
import { GROWN_KINDS, IMITATION_KINDS } from './grown-kinds.ts';
import { MEASURED, measureStone } from './measure-stone.ts';
import { METHOD_SETS } from './method-sets.ts';
import type { MethodSet } from './method-sets.ts';
import { NATURAL_KINDS } from './natural-kinds.ts';
import { sampleFindings } from './sample-findings.ts';

export const EVALUATED_KINDS: readonly EvaluatedKind[] = [...NATURAL_KINDS, ...GROWN_KINDS, ...IMITATION_KINDS];

export const MOUNTINGS = ['loose', 'open setting', 'closed setting'] as const;
export type Mounting = (typeof MOUNTINGS)[number];

/** One made-up stone and what the rules made of it. */
export type Verdict = {
  readonly kind: EvaluatedKind; readonly mounting: Mounting; readonly set: MethodSet; readonly conclusion: ConclusionId; readonly rule: string;
  /** Every instrument was in order on the day. */
  readonly inOrder: boolean;
  /** Codes that counted, for looking into errors. */
  readonly codes: readonly string[];
};

const MOUNTING_SHARES: Weighted<Mounting> = [[0.6, 'loose'], [0.2, 'open setting'], [0.2, 'closed setting']];
const SET_SHARES: Weighted<MethodSet> = [[0.35, 'full'], [0.2, 'spectroscopy'], [0.15, 'luminescence'], [0.1, 'bench'], [0.2, 'some']];
/** An instrument not in order on the day. */
const LAPSED = 0.03;

function settingOf(r: SeededRandom, mounting: Mounting): StoneSetting {
  const mounted = mounting !== 'loose';
  return {
    mounted, setting: mounting === 'open setting' ? 'open-back' : mounting === 'closed setting' ? 'closed-back' : null,
    weightCt: Math.round(r.logBetween(mounted ? 0.005 : 0.05, mounted ? 1.5 : 4) * 1000) / 1000,
  };
}

function methodsOf(r: SeededRandom, set: MethodSet, stone: StoneSetting): MethodId[] {
  const owned = set === 'some' ? some(r, METHOD_SETS.some, 3 + r.below(7)) : METHOD_SETS[set];
  // The bench's order: long-wave before short-wave, both before the after-glow.
  return METHOD_IDS.filter((method) => owned.includes(method) && isPossible(method, stone));
}

function weigh(r: SeededRandom, facts: readonly FindingFact[]): WeighedFinding[] {
  const lapsed = new Set(METHOD_IDS.filter(() => chance(r, LAPSED)));
  return facts.map((fact, i) => ({ ...fact, id: String(i), counts: !lapsed.has(fact.method), state: 'accepted', run: null }));
}

function judge(r: SeededRandom, kind: EvaluatedKind, facts: readonly FindingFact[], mounting: Mounting, set: MethodSet): Verdict {
  const findings = weigh(r, facts);
  const { counted } = readFindings(findings);
  const { conclusion, rule } = decide(counted, 'colourless');
  return { kind, mounting, set, conclusion, rule, inOrder: findings.every((finding) => finding.counts), codes: counted.map((finding) => finding.code) };
}

/** One stone whose findings are drawn from the documented chances. The seed fixes it. */
export function sampledStone(seed: number): Verdict {
  const r = seededRandom(seed);
  const kind = draw(r, EVALUATED_KINDS.map((one) => [one.share, one] as const));
  const mounting = draw(r, MOUNTING_SHARES);
  const stone = settingOf(r, mounting);
  const set = draw(r, SET_SHARES);
  return judge(r, kind, sampleFindings(r, kind, methodsOf(r, set, stone), stone.mounted), mounting, set);
}

const SIMULATED = EVALUATED_KINDS.filter((kind) => kind.simulated !== undefined && (kind.trap === null || kind.id !== 'CVD with H3 and H2'));

/** One stone whose curves are simulated and analysed; what a person sees is drawn as before. Kinds take turns, so that rare ones are tried too. */
export function measuredStone(index: number, seed: number): Verdict {
  const r = seededRandom(seed);
  const kind = SIMULATED[index % SIMULATED.length]!;
  const mounting = draw(r, MOUNTING_SHARES);
  const stone = settingOf(r, mounting);
  const set = draw(r, SET_SHARES);
  const methods = methodsOf(r, set, stone);
  const facts = [...measureStone(kind.simulated!, methods, r, seed), ...sampleFindings(r, kind, methods.filter((method) => !MEASURED.includes(method)), stone.mounted)];
  return judge(r, kind, facts, mounting, set);
}
