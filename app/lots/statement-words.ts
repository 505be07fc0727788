import { LOT_OUTCOMES, OUTCOME_SHORT, type LotOutcome } from './lot-outcome.ts';
import type { DrawnWay, LotPart, PlanContent } from './lot-record.ts';
import type { LotFigures } from './lot-statement.ts';

export const DRAWN_WORDS: Readonly<Record<DrawnWay, string>> = {
  list: 'drawn by a list of random numbers', mixed: 'taken unseen after mixing the lot', chosen: 'chosen by eye, not at random', unknown: 'how they were taken is not known',
};

export const PART_SORT_WORDS: Readonly<Record<LotPart['sort'], string>> = {
  passing: 'passing', referred: 'referred', 'laboratory-grown': 'laboratory-grown', 'not-diamond': 'not diamond', untested: 'untested', other: 'other',
};

const stones = (n: number): string => `${n} stone${n === 1 ? '' : 's'}`;
const are = (n: number): string => (n === 1 ? 'is' : 'are');
/** Numbers of the same sentence in one form: 95 or 99.9, never 95.0. */
const percent = (value: number): string => `${Number(value.toFixed(4))} %`;

/** Share of a lot: more than two decimals of a per cent would pretend. */
const share = (count: number, lot: number): string => `${Number(((100 * count) / lot).toFixed(2))} %`;

/** "2 CVD, 1 method open": how the laboratory-grown ones divide. */
function methods({ counts, grown }: LotFigures): string {
  if (grown === 0) return '';
  const short: readonly [LotOutcome, string][] = [['grown-cvd', 'CVD'], ['grown-hpht', 'HPHT'], ['grown-undetermined-method', 'growth method open']];
  return ` (${short.filter(([outcome]) => counts[outcome] > 0).map(([outcome, words]) => `${counts[outcome]} ${words}`).join(', ')})`;
}

function foundSentence(f: LotFigures): string {
  const grown = f.grown === 0 ? 'None showed' : `${stones(f.grown)} showed`;
  return `Tested: ${f.tested} of ${stones(f.lot)}. ${grown} the characteristics of laboratory-grown diamond${methods(f)}; ${f.counts.natural} showed characteristics consistent with natural diamond.`;
}

function besideSentences(f: LotFigures): string[] {
  const said: string[] = [];
  if (f.undetermined > 0) said.push(`${stones(f.undetermined)} stayed undetermined and ${are(f.undetermined)} referred for further testing.`);
  if (f.notDiamond > 0) said.push(`${stones(f.notDiamond)} ${are(f.notDiamond)} not diamond; the limits below speak of laboratory-grown diamond alone.`);
  return said;
}

const wholeLot = (f: LotFigures): boolean => f.untested === 0;

function certainSentence(f: LotFigures): string {
  if (wholeLot(f)) return f.undetermined === 0 ? `All stones were tested: the lot holds ${f.grown} that showed these characteristics.` : `All stones were tested: between ${f.certain.low} and ${f.certain.high} are laboratory-grown, depending on those that stayed undetermined.`;
  return `${stones(f.untested)} ${are(f.untested)} untested. From the tested stones alone it is certain only that between ${f.certain.low} and ${f.certain.high} of the lot are laboratory-grown.`;
}

const range = ({ low, high }: { low: number; high: number }, lot: number, sides: PlanContent['sides']): string =>
  (sides === 'upper' ? `no more than ${high} of ${lot} (${share(high, lot)})` : low === high ? `${low} of ${lot}` : `between ${low} and ${high} of ${lot} (${share(low, lot)} to ${share(high, lot)})`);

function boundsSentences(f: LotFigures, plan: PlanContent): string[] {
  if (wholeLot(f)) return [];
  if (f.bounds === null || f.sample === null) {
    if (plan.lot !== f.lot) return [`The plan was made for ${stones(plan.lot)} and the lot now counts ${f.lot}: make the plan anew before anything is said of the untested stones.`];
    if (f.tested === 0) return [];
    if (plan.size >= plan.lot) return ['The plan asks for every stone, and not all are tested: nothing follows for the others.'];
    return ['The tested stones were not drawn at random, so nothing follows for the untested ones.'];
  }
  const confidence = `With ${percent(plan.confidence)} confidence ${plan.sides === 'upper' ? '(one-sided)' : '(two-sided)'}`;
  const { asNatural, asGrown } = f.bounds;
  const said = f.sample.undetermined === 0
    ? [`${confidence} the whole lot holds ${range(asNatural, f.lot, plan.sides)} laboratory-grown stones.`]
    : [`${confidence} the whole lot holds ${range(asNatural, f.lot, plan.sides)} laboratory-grown stones if the undetermined ones are not, and ${range(asGrown, f.lot, plan.sides)} if all of them are.`];
  if (f.sample.size < f.sample.planned) said.push(`${f.sample.planned - f.sample.size} of the ${f.sample.planned} stones of the plan are still to be tested: these limits are provisional.`);
  if (f.sample.outside > 0) said.push(`${stones(f.sample.outside)} outside the drawn list were tested as well; the limits are reckoned from the list alone, and never contradict what was found.`);
  return said;
}

function aimSentences(f: LotFigures, plan: PlanContent): string[] {
  const { aim } = plan;
  if (aim.is === 'detect' && f.sample !== null && f.sample.size >= f.sample.planned && f.grown === 0 && f.undetermined === 0) {
    return [`Had ${percent(aim.percent)} or more of the lot been laboratory-grown, a sample of this size would have shown at least one with ${percent(plan.confidence)} probability.`];
  }
  if (aim.is !== 'acceptance' || plan.acceptance === null) return [];
  const { accept, refuse } = plan.acceptance;
  const against = f.grown + f.notDiamond;
  const name = `Acceptance plan of ${plan.size}, level ${aim.level}, AQL ${aim.aql} %, normal inspection`;
  if (f.sample === null) return [`${name}: not applicable, the stones were not drawn at random.`];
  if (against >= refuse) return [`${name}: ${against} that are not natural diamond, and the plan refuses at ${refuse}: the lot is not accepted by it.`];
  if (f.sample.size < f.sample.planned) return [`${name}: not finished.`];
  if (against + f.undetermined > accept) return [`${name}: open until the undetermined stones are decided; it accepts up to ${accept}.`];
  return [`${name}: ${against} found, ${accept} allowed: the lot is accepted by it, which does not say that the lot holds none. The rules that switch between normal, tightened and reduced inspection from lot to lot were not applied.`];
}

/** The sentences of a lot's statement, in order. They speak of the tested stones, of the untested ones only as limits, and never of certainty where there is none. */
export function statementSentences(figures: LotFigures, plan: PlanContent | null): string[] {
  if (figures.tested === 0) return [`None of ${stones(figures.lot)} is tested.`];
  const rest = plan === null ? (wholeLot(figures) ? [] : ['No plan says how the tested stones were taken, so nothing follows for the untested ones.']) : [...boundsSentences(figures, plan), ...aimSentences(figures, plan)];
  return [foundSentence(figures), ...besideSentences(figures), certainSentence(figures), ...rest];
}

/** How the sample was drawn, so that another can repeat it. */
export function drawnSentence(plan: PlanContent): string {
  if (plan.size >= plan.lot) return `Every one of ${stones(plan.lot)} is to be tested.`;
  const list = plan.drawn === 'list' && plan.seed !== null ? ` (starting number ${plan.seed}; stones numbered 1 to ${plan.lot})` : '';
  return `${stones(plan.size)} of ${plan.lot}, ${DRAWN_WORDS[plan.drawn]}${list}.`;
}

/** What a plan is for, in one sentence. */
export function aimSentence({ aim, size, lot, confidence, acceptance }: Pick<PlanContent, 'aim' | 'size' | 'lot' | 'confidence' | 'acceptance'>): string {
  switch (aim.is) {
    case 'detect': return `Test ${size} of ${lot}: if ${percent(aim.percent)} or more are laboratory-grown, at least one is among them with ${percent(confidence)} confidence.`;
    case 'acceptance': return `Test ${size} of ${lot} (code letter ${acceptance!.letter}${acceptance!.planLetter === acceptance!.letter ? '' : `, plan of ${acceptance!.planLetter}`}): accept on ${acceptance!.accept} or fewer, refuse on ${acceptance!.refuse} or more.`;
    case 'all': return `Test all ${lot} stones.`;
    case 'own': return `Test ${size} of ${lot}, a number of the laboratory’s own choice.`;
  }
}

export const outcomeRows = (figures: LotFigures): { outcome: LotOutcome; words: string; count: number }[] =>
  LOT_OUTCOMES.map((outcome) => ({ outcome, words: OUTCOME_SHORT[outcome], count: figures.counts[outcome] }));
