import type { LotResultView, LotView } from '../../contract/lots.ts';
import type { LaboratoryView } from '../../contract/casebook.ts';
import { acceptanceRisks } from '../../lots/acceptance-risks.ts';
import type { PlanContent } from '../../lots/lot-record.ts';
import { lotRemarks } from '../../lots/lot-remarks.ts';
import { lotFigures } from '../../lots/lot-statement.ts';
import { sieveWords } from '../../lots/sieve-table.ts';
import { balanceOf } from '../../lots/split-balance.ts';
import { aimSentence, drawnSentence, outcomeRows, PART_SORT_WORDS, statementSentences } from '../../lots/statement-words.ts';
import { weighedText, type BalanceUncertainty } from './weight-text.ts';

/** A lot as its report is written from it. */
export type SourceLot = { readonly lot: LotView; readonly results: readonly LotResultView[] };

/** What a report says of one lot, in words and numbers as they are printed. */
export type LotText = {
  label: string; heading: string; facts: { label: string; value: string; mono: boolean }[];
  sampling: string[]; outcomes: { words: string; count: number }[]; statement: string[]; remarks: string[];
  sizes: { size: string; count: string; weight: string }[]; parts: { part: string; count: string; weight: string }[]; balance: string[];
  /** Numbers of the stones that did not show natural characteristics, by outcome. */
  named: { words: string; numbers: string }[];
};

/** Numbers printed of one outcome; the rest is counted. */
const MOST_NUMBERS = 150;

function numbersOf(numbers: readonly number[]): string {
  const rest = numbers.length - MOST_NUMBERS;
  return `${numbers.slice(0, MOST_NUMBERS).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

const carat = (units: number | null, settings: BalanceUncertainty, read: 'ct' | 'g' = 'ct'): string => (units === null ? '–' : weighedText(units, 'ct', settings, read));

const chance = (probability: number): string => (probability < 0.0005 ? 'less than 0.1 %' : `${Number((100 * probability).toFixed(1))} %`);

/** The risks of an acceptance plan, for whoever must rely on what it says. */
function risks(plan: PlanContent): string[] {
  const found = acceptanceRisks(plan);
  if (found === null) return [];
  const { good, bad } = found;
  const share = Number(((100 * bad.against) / plan.lot).toFixed(1));
  return [`Risks of this plan: a lot of ${plan.lot} that holds ${good.against} stones other than natural diamond is refused with a probability of ${chance(good.refused)}; one that holds ${bad.against} of them (${share} %) is still accepted with ${chance(bad.accepted)}.`];
}

function sampling({ lot }: SourceLot): string[] {
  if (lot.plan === null) return ['No sampling plan was recorded.'];
  const { content } = lot.plan;
  return [`${aimSentence(content)} Taken: ${drawnSentence(content)}`, `Reason for this plan: ${content.reason}`, ...risks(content), content.method === '' ? 'How each stone was tested is not recorded.' : `Each stone was tested by: ${content.method}`];
}

/** The lots of a case for its report; a lot without a count or without any record of its own is left out. */
export function lotText(source: SourceLot, { settings }: LaboratoryView): LotText | null {
  const { lot, results } = source;
  if (lot.count === null || (lot.plan === null && results.length === 0 && lot.counted === null)) return null;
  const plan = lot.plan?.content ?? null;
  const figures = lotFigures(lot.count, results, plan);
  const balance = lot.split === null ? null : balanceOf(lot.split.parts, lot, lot.tolerance);
  const folders = new Map(lot.folders.map((one) => [one.stoneId, one]));
  const testers = [...new Set(results.map((one) => one.by))].join(', ');
  return {
    label: lot.label, heading: lot.declared,
    facts: [
      { label: 'Stones', value: String(lot.count), mono: true }, { label: 'Weight', value: carat(lot.weight, settings, lot.weighedIn), mono: true },
      ...(lot.counted === null ? [] : [{ label: 'Counted by', value: lot.counted.by, mono: false }]), ...(testers === '' ? [] : [{ label: 'Tested by', value: testers, mono: false }]),
    ],
    sampling: sampling(source),
    outcomes: [...outcomeRows(figures).filter((row) => row.count > 0).map(({ words, count }) => ({ words, count })), { words: 'untested', count: figures.untested }],
    statement: statementSentences(figures, plan),
    remarks: lotRemarks(lot.count, results, plan, folders),
    sizes: (lot.counted?.sieves ?? []).map((one) => ({ size: sieveWords(one.over, one.through, settings.sieves), count: one.count === null ? '–' : String(one.count), weight: carat(one.weight, settings) })),
    parts: (lot.split?.parts ?? []).map((part) => ({ part: part.name === '' ? PART_SORT_WORDS[part.sort] : `${PART_SORT_WORDS[part.sort]}, ${part.name}`, count: String(part.count), weight: carat(part.weight, settings) })),
    balance: balance?.sentences.map((one) => one.text) ?? [],
    named: outcomeRows(figures).filter((row) => row.outcome !== 'natural' && row.count > 0)
      .map((row) => ({ words: row.words, numbers: numbersOf(results.filter((one) => one.outcome === row.outcome && one.number <= figures.lot).map((one) => one.number)) })),
  };
}
