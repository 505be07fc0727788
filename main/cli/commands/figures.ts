import { figuresContract } from '../../../app/contract/figures.ts';
import { agreementCsv, checksCsv, overTimeCsv, ratesCsv, trialsCsv } from '../../../app/history/figures-csv.ts';
import { perCent, shareWords } from '../../../app/history/share-words.ts';
import { missedAmongPassed, missedAtMost } from '../../../app/statistics/screening-figures.ts';
import type { Casebook } from '../../../db/open-casebook.ts';
import { openView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble } from '../trouble.ts';

export const FIGURE_TABLES = ['over-time', 'agreement', 'checks', 'trials', 'rates'] as const;
export type FigureTable = (typeof FIGURE_TABLES)[number];

export type FiguresCommand = {
  readonly casebook: string | undefined; readonly dataFolder: string; readonly json: boolean;
  /** Days yyyy-mm-dd, both included; without them from the first case to today. */
  readonly from: string | undefined; readonly to: string | undefined; readonly by: string;
  /** Print this table as comma-separated text instead of sentences. */
  readonly csv: FigureTable | undefined;
};

/** First and last day of a casebook that are worth counting. */
async function spanOf(casebook: Casebook): Promise<{ from: string; to: string }> {
  const { firstCounted, today } = await casebook.history.choices(new Date().toISOString());
  return { from: firstCounted ?? today, to: today };
}

/** The laboratory's figures over time, as sentences, JSON or comma-separated text. */
export async function runFigures(command: FiguresCommand, io: CliIo): Promise<ExitCode> {
  const view = await openView({ ...command, workingFolder: io.workingFolder });
  if (!view.ok) return sayTrouble(view.error, command.json, io);
  try {
    const { casebook, file } = view.value;
    const span = await spanOf(casebook);
    const asked = figuresContract['figures.overTime'].input.safeParse({ from: command.from ?? span.from, to: command.to ?? span.to, grain: command.by });
    if (!asked.success) return sayTrouble({ code: 'wrong-period', message: asked.error.issues[0]!.message, next: 'Say --from and --to as days, for instance 2026-01-01, and --by week, month, quarter or year.' }, command.json, io);
    const period = { from: asked.data.from, to: asked.data.to };
    const overTime = await casebook.figures.overTime(asked.data);
    const agreement = await casebook.figures.agreement(period);
    const checks = await casebook.figures.checks(period);
    const { people: _people, instruments: _instruments, ...trials } = await casebook.trials.list(period);
    if (command.csv !== undefined) io.out({ 'over-time': () => overTimeCsv(overTime), agreement: () => agreementCsv(agreement), checks: () => checksCsv(checks.series), trials: () => trialsCsv(trials), rates: () => ratesCsv(trials, trials.assumedNotNatural) }[command.csv]());
    else if (command.json) printJson(io, { ok: true, casebook: file, ...period, by: asked.data.grain, overTime, agreement, checks, trials });
    else io.out(inWords(file, period, overTime.whole, agreement, trials));
    return EXIT.done;
  } finally {
    view.value.close();
  }
}

type Whole = Awaited<ReturnType<Casebook['figures']['overTime']>>['whole'];
type Agreement = Awaited<ReturnType<Casebook['figures']['agreement']>>;
type Trials = Pick<Awaited<ReturnType<Casebook['trials']['list']>>, 'blind' | 'assumedNotNatural'>;

function inWords(file: string, { from, to }: { from: string; to: string }, whole: Whole, { readFirst, seen }: Agreement, { blind, assumedNotNatural }: Trials): string {
  const took = whole.turnaround === null ? 'no report issued' : `median ${whole.turnaround.median.toFixed(1)} days, quartiles ${whole.turnaround.lower.toFixed(1)} and ${whole.turnaround.upper.toFixed(1)}, of ${whole.turnaround.n}`;
  const missed = missedAmongPassed(blind, assumedNotNatural / 100);
  const lines = [
    ['cases received', String(whole.received)], ['stones settled', String(whole.settled)], ['reports issued', `${whole.reported}, ${whole.amended} amended, ${whole.withdrawn} withdrawn`],
    ['cases open now', String(whole.open)], ['receipt to report', took], ['sent further', shareWords(whole.sentFurther)],
    ['two readings agree', `${shareWords(readFirst.observed)}${readFirst.kappa === null ? '' : `, Cohen’s kappa ${readFirst.kappa.toFixed(3)}`}`], ['confirmed', shareWords(seen.observed)],
    ['false natural', `${shareWords(blind.falseNatural)}, in trials of known samples`],
    ['missed if passed', Number.isNaN(missed) ? 'nothing can be computed from these trials' : `${perCent(missed)}, up to ${perCent(missedAtMost(blind, assumedNotNatural / 100))} with 95 % confidence, if ${assumedNotNatural} % of what comes in is not natural (assumed by the house, no finding)`],
  ] as const;
  return [file, `${from} to ${to}`, ...lines.map(([name, said]) => `  ${name.padEnd(20)} ${said}`), ''].join('\n');
}
