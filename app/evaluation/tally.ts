import { CONCLUSION_IDS } from '../domain/conclusion.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { clopperPearson, upperLimit } from './clopper-pearson.ts';
import { TRUTHS } from './evaluated-kind.ts';
import type { Truth } from './evaluated-kind.ts';
import type { Mounting, Verdict } from './evaluate.ts';
import type { MethodSet } from './method-sets.ts';

export type Rate = { readonly count: number; readonly of: number; readonly share: number | null; readonly low: number; readonly high: number };
type Counts = Record<ConclusionId, number>;

export type Tally = {
  readonly stones: number;
  readonly confusion: Readonly<Record<Truth, Counts>>;
  /** Per kind: its truth, trap, source, counts. */
  readonly kinds: readonly { readonly id: string; readonly truth: Truth; readonly trap: string | null; readonly source: string; readonly counts: Counts }[];
  /** Laboratory-grown (layers included) called natural. */
  readonly falseNatural: Rate & { readonly upperOneSided: number };
  /** Imitations called natural or any diamond. */
  readonly imitationAsDiamond: Rate;
  /** Natural, treated or not, called laboratory-grown. */
  readonly falseGrown: Rate;
  /** Treated natural stones called natural without a word of treatment. */
  readonly treatmentMissed: Rate;
  /** Sent to further testing, by mounting and method set; and loose natural type Ia with all methods and every instrument in order, which has a target. */
  readonly furtherTesting: readonly { readonly mounting: Mounting; readonly set: MethodSet; readonly rate: Rate }[];
  readonly looseNaturalIa: Rate;
  /** The first stones of each error, for looking into. */
  readonly errors: readonly { readonly kind: string; readonly mounting: Mounting; readonly set: MethodSet; readonly conclusion: ConclusionId; readonly rule: string; readonly codes: readonly string[] }[];
};

const ERRORS_SHOWN = 20;
const none = (): Counts => Object.fromEntries(CONCLUSION_IDS.map((id) => [id, 0])) as Counts;
const isGrownTruth = (truth: Truth): boolean => truth === 'cvd' || truth === 'hpht' || truth === 'layer';
const isNaturalTruth = (truth: Truth): boolean => truth === 'natural' || truth === 'natural-treated';
const saysGrown = (conclusion: ConclusionId): boolean => conclusion === 'grown-cvd' || conclusion === 'grown-hpht' || conclusion === 'grown-undetermined-method';
const isOpen = (conclusion: ConclusionId): boolean => conclusion === 'undetermined';

export function rateOf(count: number, of: number): Rate {
  const { low, high } = of === 0 ? { low: 0, high: 1 } : clopperPearson(count, of);
  return { count, of, share: of === 0 ? null : count / of, low, high };
}

function rate(verdicts: readonly Verdict[], among: (one: Verdict) => boolean, is: (one: Verdict) => boolean): Rate {
  const all = verdicts.filter(among);
  return rateOf(all.filter(is).length, all.length);
}

const isError = ({ kind, conclusion }: Verdict): boolean =>
  (isGrownTruth(kind.truth) && conclusion === 'natural') || (isNaturalTruth(kind.truth) && saysGrown(conclusion)) || (kind.truth === 'not-diamond' && (conclusion === 'natural' || saysGrown(conclusion)));

/** Counts what the rules made of made-up stones whose truth is known. */
export function tally(verdicts: readonly Verdict[]): Tally {
  const confusion = Object.fromEntries(TRUTHS.map((truth) => [truth, none()])) as Record<Truth, Counts>;
  const kinds = new Map<string, Tally['kinds'][number]>();
  const cells = new Map<string, { mounting: Mounting; set: MethodSet; open: number; of: number }>();
  for (const { kind, mounting, set, conclusion } of verdicts) {
    confusion[kind.truth][conclusion]++;
    const row = kinds.get(kind.id) ?? { id: kind.id, truth: kind.truth, trap: kind.trap, source: kind.source, counts: none() };
    row.counts[conclusion]++;
    kinds.set(kind.id, row);
    const cell = cells.get(`${mounting}/${set}`) ?? { mounting, set, open: 0, of: 0 };
    cell.of++;
    if (isOpen(conclusion)) cell.open++;
    cells.set(`${mounting}/${set}`, cell);
  }
  const falseNatural = rate(verdicts, ({ kind }) => isGrownTruth(kind.truth), ({ conclusion }) => conclusion === 'natural');
  return {
    stones: verdicts.length, confusion, kinds: [...kinds.values()].sort((a, b) => TRUTHS.indexOf(a.truth) - TRUTHS.indexOf(b.truth) || (a.id < b.id ? -1 : 1)),
    falseNatural: { ...falseNatural, upperOneSided: falseNatural.of === 0 ? 1 : upperLimit(falseNatural.count, falseNatural.of) },
    imitationAsDiamond: rate(verdicts, ({ kind }) => kind.truth === 'not-diamond', ({ conclusion }) => conclusion === 'natural' || saysGrown(conclusion)),
    falseGrown: rate(verdicts, ({ kind }) => isNaturalTruth(kind.truth), ({ conclusion }) => saysGrown(conclusion)),
    treatmentMissed: rate(verdicts, ({ kind }) => kind.truth === 'natural-treated', ({ conclusion }) => conclusion === 'natural'),
    furtherTesting: [...cells.values()].sort((a, b) => (`${a.mounting}${a.set}` < `${b.mounting}${b.set}` ? -1 : 1)).map(({ mounting, set, open, of }) => ({ mounting, set, rate: rateOf(open, of) })),
    looseNaturalIa: rate(verdicts, ({ kind, mounting, set, inOrder }) => kind.id === 'natural Ia' && mounting === 'loose' && set === 'full' && inOrder, ({ conclusion }) => isOpen(conclusion)),
    errors: verdicts.filter(isError).slice(0, ERRORS_SHOWN).map(({ kind, mounting, set, conclusion, rule, codes }) => ({ kind: kind.id, mounting, set, conclusion, rule, codes })),
  };
}
