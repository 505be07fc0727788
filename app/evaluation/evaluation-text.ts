import { CONCLUSION_IDS } from '../domain/conclusion.ts';
import type { ConclusionId } from '../domain/conclusion.ts';
import { TRUTHS, TRUTH_WORDS } from './evaluated-kind.ts';
import { METHOD_SET_WORDS } from './method-sets.ts';
import type { Rate, Tally } from './tally.ts';

const SHORT: Readonly<Record<ConclusionId, string>> = {
  natural: 'natural', 'grown-cvd': 'CVD', 'grown-hpht': 'HPHT', 'grown-undetermined-method': 'grown', 'not-diamond': 'not diam.', undetermined: 'further', 'out-of-scope': 'out of sc.',
};
const percent = (share: number | null): string => (share === null ? '–' : `${(100 * share).toFixed(2)} %`);
const withLimits = ({ count, of, share, low, high }: Rate): string => `${count} of ${of}: ${percent(share)} (${percent(low)} to ${percent(high)})`;

function table(rows: readonly { readonly name: string; readonly counts: Readonly<Record<ConclusionId, number>> }[], width: number): string[] {
  const head = `${''.padEnd(width)}${CONCLUSION_IDS.map((id) => SHORT[id].padStart(11)).join('')}`;
  return [head, ...rows.map(({ name, counts }) => `${name.padEnd(width)}${CONCLUSION_IDS.map((id) => String(counts[id]).padStart(11)).join('')}`)];
}

/** One tally in lines of text; intervals are Clopper–Pearson, 95 %, two-sided. */
export function tallyText(title: string, one: Tally): string {
  return [
    title, '',
    'What they are, and what was said (columns: conclusions; “further” is undetermined, further testing required)',
    ...table(TRUTHS.map((truth) => ({ name: TRUTH_WORDS[truth], counts: one.confusion[truth] })), 24), '',
    'By kind',
    ...table(one.kinds.map(({ id, counts }) => ({ name: id, counts })), 46), '',
    'Rates with Clopper–Pearson limits, 95 %',
    `  laboratory-grown called natural            ${withLimits(one.falseNatural)}; one-sided upper limit ${percent(one.falseNatural.upperOneSided)}`,
    `  natural called laboratory-grown            ${withLimits(one.falseGrown)}`,
    `  imitation called diamond of any origin     ${withLimits(one.imitationAsDiamond)}`,
    `  treated natural called natural             ${withLimits(one.treatmentMissed)}`, '',
    'Sent to further testing, by mounting and methods (the drawn stones hold many rare kinds)',
    ...one.furtherTesting.map(({ mounting, set, rate }) => `  ${mounting.padEnd(15)} ${METHOD_SET_WORDS[set].padEnd(66)} ${withLimits(rate)}`), '',
    ...(one.errors.length === 0 ? [] : ['Errors, the first of them', ...one.errors.map(({ kind, mounting, set, conclusion, rule, codes }) => `  ${kind}, ${mounting}, ${set}: ${conclusion} by ${rule}: ${codes.join(' ')}`), '']),
  ].join('\n');
}

