import type { AgreementOutcome, CheckSeries, FiguresOutcome, FiguresPeriod } from '../../app/contract/figures.ts';
import { addDays } from '../../app/custody/calendar.ts';
import { startOfDay } from '../../app/custody/zone-instant.ts';
import { CONCLUSION_IDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { clopperPearson } from '../../app/evaluation/clopper-pearson.ts';
import { figuresOverTime, type TimeFacts } from '../../app/history/figures-over-time.ts';
import { stepsOf, type Grain } from '../../app/history/steps.ts';
import { cohenKappa, kappaLimits } from '../../app/statistics/cohen-kappa.ts';
import { controlCourse } from '../../app/statistics/control-course.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { aTurn } from '../a-turn.ts';
import { rowsInSlices } from '../lists/in-slices.ts';
import { theLaboratory } from './laboratory.ts';

export type FiguresStore = {
  /** Throughput, turnaround, outcomes and what is open, step by step and for the whole period. */
  overTime(period: FiguresPeriod & { readonly grain: Grain }): Promise<FiguresOutcome>;
  /** How well second persons' conclusions agree with the first ones, of answers given in the period. */
  agreement(period: FiguresPeriod): Promise<AgreementOutcome>;
  /** Checks that gave a number, as series of one quantity of one instrument. */
  checks(period: FiguresPeriod): Promise<{ series: CheckSeries[]; withoutNumber: number }>;
};

/** First instant of a period and the first after it. */
export function boundsOf(db: ReadDb, { from, to }: FiguresPeriod): { readonly begins: string; readonly ends: string } {
  const { zone } = theLaboratory(db);
  return { begins: startOfDay(from, zone), ends: startOfDay(addDays(to, 1), zone) };
}

/** A trial `t` that was not taken back: one that was makes no sample of its stone, and counts nowhere. */
export const TRIAL_STANDS = 'NOT EXISTS (SELECT 1 FROM known_sample_trial_withdrawal b WHERE b.trial_id = t.id)';

/** Stones that were known samples: no client's, and so in no figure of the house. */
const NO_SAMPLE = (stoneId: string): string => `NOT EXISTS (SELECT 1 FROM known_sample_trial t WHERE t.stone_id = ${stoneId} AND ${TRIAL_STANDS})`;

/** A case is done with at its first report; one that was given back without any, when the last of it was. */
const CASES = `
  SELECT n.received_at AS receivedAt, coalesce((SELECT min(r.issued_at) FROM report r WHERE r.case_id = n.id),
    CASE WHEN n.state = 'returned' THEN (SELECT max(e.at) FROM item i JOIN custody_entry e ON e.item_id = i.id AND json_extract(e.content, '$.event') = 'returned' WHERE i.case_id = n.id) END) AS doneAt
  FROM case_record n WHERE n.rowid BETWEEN @low AND @high`;

async function timeFacts(db: ReadDb, begins: string, ends: string): Promise<TimeFacts & { readonly knownSamples: number }> {
  const span = { begins, ends };
  const instants = (sql: string): string[] => db.all<{ at: string }>(sql, span).map(({ at }) => at);
  return {
    cases: await rowsInSlices(db, 'case_record', CASES),
    reports: db.all(`SELECT n.received_at AS receivedAt, r.issued_at AS issuedAt FROM report r JOIN case_record n ON n.id = r.case_id WHERE r.revision = 1 AND r.issued_at >= @begins AND r.issued_at < @ends`, span),
    amended: instants('SELECT issued_at AS at FROM report WHERE revision > 1 AND issued_at >= @begins AND issued_at < @ends'),
    withdrawn: instants('SELECT at FROM report_withdrawal WHERE at >= @begins AND at < @ends'),
    settled: await rowsInSlices<{ at: string; conclusion: ConclusionId }>(db, 'confirmation', `
      SELECT f.at, c.conclusion FROM confirmation f JOIN conclusion c ON c.id = f.conclusion_id
      WHERE f.rowid BETWEEN @low AND @high AND f.agrees = 1 AND f.at >= @begins AND f.at < @ends AND NOT EXISTS (SELECT 1 FROM conclusion l WHERE l.stone_id = c.stone_id AND l.ordinal > c.ordinal) AND ${NO_SAMPLE('c.stone_id')}`, span),
    knownSamples: db.get<{ n: number }>(`SELECT count(*) AS n FROM known_sample_trial t WHERE t.stone_id IS NOT NULL AND t.examined_at >= @begins AND t.examined_at < @ends AND ${TRIAL_STANDS}`, span)!.n,
  };
}

async function overTime(db: ReadDb, { from, to, grain }: FiguresPeriod & { readonly grain: Grain }): Promise<FiguresOutcome> {
  const steps = stepsOf(from, to, grain).map((step) => ({ ...step, ...boundsOf(db, step) }));
  const facts = await timeFacts(db, steps[0]!.begins, steps.at(-1)!.ends);
  await aTurn();
  const { steps: each, whole } = figuresOverTime(facts, steps);
  return { steps: each.map((figures, i) => { const { label, from: first, to: last, isPart } = steps[i]!; return { label, from: first, to: last, isPart, ...figures }; }), whole, knownSamples: facts.knownSamples };
}

type Answer = { first: ConclusionId; second: ConclusionId | null; agrees: number; read_first: number | null };

function tableOf(answers: readonly Answer[]): AgreementOutcome['readFirst'] {
  // Who agreed before own conclusions were asked for concluded the same.
  const pairs = answers.map(({ first, second }) => [first, second ?? first] as const);
  const counted = new Map<string, number>();
  for (const [first, second] of pairs) counted.set(`${first} ${second}`, (counted.get(`${first} ${second}`) ?? 0) + 1);
  const seen = new Set([...counted.keys()].flatMap((pair) => pair.split(' ')));
  const outcomes = CONCLUSION_IDS.filter((id) => seen.has(id));
  const counts = outcomes.map((row) => outcomes.map((column) => counted.get(`${row} ${column}`) ?? 0));
  const found = cohenKappa(counts);
  const same = pairs.filter(([first, second]) => first === second).length;
  return {
    outcomes, counts, n: found.n, observed: { count: same, of: found.n, limits: clopperPearson(same, found.n) },
    byChance: Number.isNaN(found.byChance) ? null : found.byChance, kappa: found.kappa, standardError: found.standardError, limits: kappaLimits(found),
  };
}

async function agreement(db: ReadDb, period: FiguresPeriod): Promise<AgreementOutcome> {
  const answers = await rowsInSlices<Answer>(db, 'confirmation', `
    SELECT c.conclusion AS first, f.outcome AS second, f.agrees, f.read_first FROM confirmation f JOIN conclusion c ON c.id = f.conclusion_id
    WHERE f.rowid BETWEEN @low AND @high AND f.at >= @begins AND f.at < @ends`, boundsOf(db, period));
  const stated = answers.filter((answer) => answer.second !== null || answer.agrees === 1);
  return {
    readFirst: tableOf(stated.filter((answer) => answer.read_first === 1)), seen: tableOf(stated.filter((answer) => answer.read_first !== 1)),
    unstated: answers.length - stated.length,
  };
}

type CheckRow = { instrument_id: string; instrument: string; quantity: string; unit: string; expected: number | null; tolerance: number | null; at: string; by: string; value: number; passed: number };
type Service = { instrument_id: string; at: string; words: string };

/** Limits and rules are of the whole course: a period that begins after a drift would otherwise call the drift normal. After a service they begin anew, with the first value that comes then. */
function seriesOf(rows: readonly CheckRow[], services: readonly Service[], begins: string): CheckSeries {
  const newest = rows.at(-1)!;
  const own = services.filter(({ instrument_id: id }) => id === newest.instrument_id);
  /** The last service between a value and the one before it. */
  const before = rows.map((row, i) => own.findLast(({ at }) => at <= row.at && i > 0 && at > rows[i - 1]!.at) ?? null);
  const course = controlCourse(rows.map(({ value }, i) => ({ value, begins: before[i] !== null })));
  return {
    instrumentId: newest.instrument_id, instrument: newest.instrument, quantity: newest.quantity, unit: newest.unit,
    points: rows.map((row, i) => ({ at: row.at, by: row.by, value: row.value, passed: row.passed === 1, expected: row.expected, tolerance: row.tolerance, base: course.points[i]!.base, signals: [...course.points[i]!.signals] })).filter(({ at }) => at >= begins),
    bases: course.bases.map(({ from, count, limits }) => { const service = before[from] ?? null; return { at: rows[from]!.at, service: service === null ? null : { at: service.at, words: service.words }, limits, checks: count }; }),
  };
}

function checks(db: ReadDb, period: FiguresPeriod): { series: CheckSeries[]; withoutNumber: number } {
  const span = boundsOf(db, period);
  const rows = db.all<CheckRow>(`
    SELECT k.instrument_id, i.name AS instrument, k.quantity, k.unit, k.expected, k.tolerance, k.at, p.name AS by, k.value, k.passed
    FROM instrument_check k JOIN instrument i ON i.id = k.instrument_id JOIN person p ON p.id = k.person_id
    WHERE k.value IS NOT NULL AND k.at < @ends ORDER BY i.name COLLATE NOCASE, k.instrument_id, k.quantity COLLATE NOCASE, k.unit, k.at, k.rowid`, { ends: span.ends });
  const services = db.all<Service>('SELECT instrument_id, at, outcome AS words FROM instrument_check WHERE after_service = 1 AND at < @ends ORDER BY at, rowid', { ends: span.ends });
  const groups = new Map<string, CheckRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.instrument_id, row.quantity.toLowerCase(), row.unit]);
    groups.set(key, [...groups.get(key) ?? [], row]);
  }
  return {
    series: [...groups.values()].map((group) => seriesOf(group, services, span.begins)).filter(({ points }) => points.length > 0),
    withoutNumber: db.get<{ n: number }>('SELECT count(*) AS n FROM instrument_check WHERE value IS NULL AND at >= @begins AND at < @ends', span)!.n,
  };
}

export function createFiguresStore(handle: StoreHandle): FiguresStore {
  const db = handle.read;
  return {
    async overTime(period) { return overTime(db, period); },
    async agreement(period) { return agreement(db, period); },
    async checks(period) { return checks(db, period); },
  };
}
