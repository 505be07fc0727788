import type { FiguresPeriod, KnownSampleView, TrialsOutcome, TrialView } from '../../app/contract/figures.ts';
import { startOfDay } from '../../app/custody/zone-instant.ts';
import type { ConclusionId } from '../../app/domain/conclusion.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { screeningFigures, type Truth } from '../../app/statistics/screening-figures.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { knownSample, knownSampleTrial, knownSampleTrialWithdrawal, knownSampleWithdrawal } from '../schema/index.ts';
import { boundsOf, TRIAL_STANDS } from './figures.ts';
import { theLaboratory } from './laboratory.ts';

type PersonChange = Change & { readonly personId: string };

/** Why a sample or a trial was not written down. */
export type TrialRefusal = 'label-taken' | 'no-sample' | 'withdrawn' | 'no-stone' | 'not-confirmed' | 'already-linked' | 'no-person' | 'in-future' | 'not-blind' | 'no-trial' | 'taken-back' | 'no-instrument';

type TrialEntry = { readonly sampleId: string; readonly blind: boolean; readonly remark: string; readonly instrumentIds: readonly string[] };

export type TrialsStore = {
  /** Every sample, and the trials that were concluded in the period with what follows from them. */
  list(period: FiguresPeriod): Promise<TrialsOutcome>;
  addSample(change: PersonChange, sample: { readonly label: string; readonly truth: Truth; readonly basis: string }): Promise<Result<KnownSampleView, TrialRefusal>>;
  /** Its trials stay; where its origin was wrong they count no longer. */
  withdrawSample(change: PersonChange, sampleId: string, withdrawal: { readonly reason: string; readonly originWrong: boolean }): Promise<Result<KnownSampleView, TrialRefusal>>;
  /** A trial that was entered by mistake: it stays in the list and counts nowhere, and its stone may be linked again. */
  withdraw(change: PersonChange, trialId: string, reason: string): Promise<Result<TrialView, TrialRefusal>>;
  /** The outcome, the examiner and the time are those of the stone's standing conclusion, which a second person has to have confirmed. */
  addFromStone(change: PersonChange, trial: TrialEntry & { readonly caseNumber: string; readonly stoneLabel: string }): Promise<Result<TrialView, TrialRefusal>>;
  addByHand(change: PersonChange, trial: TrialEntry & { readonly outcome: ConclusionId; readonly examinerId: string; readonly examinedOn: string }): Promise<Result<TrialView, TrialRefusal>>;
};

const SAMPLES = `
  SELECT k.id, k.label, k.truth, k.basis, k.created_at AS createdAt, p.name AS createdBy, (SELECT count(*) FROM known_sample_trial t WHERE t.sample_id = k.id AND ${TRIAL_STANDS}) AS trials,
         w.at AS withdrawn_at, q.name AS withdrawn_by, w.reason AS withdrawn_reason, w.origin_wrong
  FROM known_sample k JOIN person p ON p.id = k.created_by LEFT JOIN known_sample_withdrawal w ON w.sample_id = k.id LEFT JOIN person q ON q.id = w.person_id`;

type SampleRow = Omit<KnownSampleView, 'withdrawn'> & { withdrawn_at: string | null; withdrawn_by: string | null; withdrawn_reason: string | null; origin_wrong: number | null };

const sampleOf = ({ withdrawn_at: at, withdrawn_by: by, withdrawn_reason: reason, origin_wrong: wrong, ...row }: SampleRow): KnownSampleView =>
  ({ ...row, withdrawn: at === null ? null : { at, by: by ?? '', reason: reason ?? '', originWrong: wrong === 1 } });

const TRIALS = `
  SELECT t.id, t.sample_id AS sampleId, k.label AS sample, k.truth, t.outcome, e.name AS examiner, t.examined_at AS examinedAt, t.blind, t.remark, t.at, p.name AS by,
         t.stone_id, s.label AS stone_label, n.number, b.at AS back_at, c.name AS back_by, b.reason AS back_reason, w.origin_wrong,
         (SELECT json_group_array(i.name) FROM json_each(coalesce(t.instrument_ids, '[]')) u JOIN instrument i ON i.id = u.value) AS used
  FROM known_sample_trial t JOIN known_sample k ON k.id = t.sample_id JOIN person e ON e.id = t.examiner_id JOIN person p ON p.id = t.person_id
  LEFT JOIN stone s ON s.id = t.stone_id LEFT JOIN case_record n ON n.id = s.case_id
  LEFT JOIN known_sample_trial_withdrawal b ON b.trial_id = t.id LEFT JOIN person c ON c.id = b.person_id LEFT JOIN known_sample_withdrawal w ON w.sample_id = k.id`;

type TrialRow = Omit<TrialView, 'stone' | 'blind' | 'instruments' | 'withdrawn' | 'counts'> & {
  blind: number; stone_id: string | null; stone_label: string | null; number: string | null;
  back_at: string | null; back_by: string | null; back_reason: string | null; origin_wrong: number | null; used: string;
};

const trialOf = ({ stone_id: id, stone_label: label, number, blind, back_at: at, back_by: by, back_reason: reason, origin_wrong: wrong, used, ...row }: TrialRow): TrialView => ({
  ...row, blind: blind === 1, stone: id === null ? null : { id, label: label ?? '', caseNumber: number ?? '' }, instruments: JSON.parse(used) as string[],
  withdrawn: at === null ? null : { at, by: by ?? '', reason: reason ?? '' }, counts: at === null && wrong !== 1,
});

function listed(db: ReadDb, period: FiguresPeriod): TrialsOutcome {
  const trials = db.all<TrialRow>(`${TRIALS} WHERE t.examined_at >= @begins AND t.examined_at < @ends ORDER BY t.examined_at DESC, t.rowid DESC`, boundsOf(db, period)).map(trialOf);
  const counted = trials.filter((trial) => trial.counts);
  return {
    assumedNotNatural: theLaboratory(db).settings.assumedNotNatural,
    samples: db.all<SampleRow>(`${SAMPLES} ORDER BY w.at IS NOT NULL, k.label COLLATE NOCASE`).map(sampleOf), trials,
    blind: screeningFigures(counted.filter((trial) => trial.blind)), all: screeningFigures(counted),
    people: db.all('SELECT id, name FROM person ORDER BY name COLLATE NOCASE'), instruments: db.all('SELECT id, name FROM instrument ORDER BY active DESC, name COLLATE NOCASE'),
  };
}

const sampleById = (tx: WriteTx, id: string): KnownSampleView | null => { const row = tx.get<SampleRow>(`${SAMPLES} WHERE k.id = @id`, { id }); return row === undefined ? null : sampleOf(row); };

const trialById = (tx: WriteTx, id: string): TrialView | null => { const row = tx.get<TrialRow>(`${TRIALS} WHERE t.id = @id`, { id }); return row === undefined ? null : trialOf(row); };

const instrumentsThere = (tx: WriteTx, ids: readonly string[]): boolean => new Set(ids).size === ids.length
  && tx.get<{ n: number }>('SELECT count(*) AS n FROM instrument WHERE id IN (SELECT value FROM json_each(@ids))', { ids: JSON.stringify(ids) })!.n === ids.length;

/** The sample, where it may be tried. */
function usable(tx: WriteTx, sampleId: string): Result<KnownSampleView, TrialRefusal> {
  const sample = sampleById(tx, sampleId);
  if (sample === null) return err('no-sample');
  return sample.withdrawn === null ? ok(sample) : err('withdrawn');
}

type Examined = { readonly stoneId: string | null; readonly outcome: ConclusionId; readonly examinerId: string; readonly examinedAt: string };

/** The standing conclusion of a stone, where a second person agreed with it. */
function settledStone(tx: WriteTx, caseNumber: string, stoneLabel: string): Result<Examined, TrialRefusal> {
  const stone = tx.get<{ id: string }>(`SELECT s.id FROM stone s JOIN case_record n ON n.id = s.case_id WHERE n.number = @caseNumber COLLATE NOCASE AND s.label = @stoneLabel COLLATE NOCASE`, { caseNumber, stoneLabel });
  if (stone === undefined) return err('no-stone');
  const standing = tx.get<{ conclusion: ConclusionId; person_id: string; at: string; agrees: number | null }>(`
    SELECT c.conclusion, c.person_id, c.at, f.agrees FROM conclusion c LEFT JOIN confirmation f ON f.conclusion_id = c.id WHERE c.stone_id = @id ORDER BY c.ordinal DESC LIMIT 1`, stone);
  if (standing?.agrees !== 1) return err('not-confirmed');
  if (tx.get(`SELECT 1 FROM known_sample_trial t WHERE t.stone_id = @id AND ${TRIAL_STANDS}`, stone) !== undefined) return err('already-linked');
  return ok({ stoneId: stone.id, outcome: standing.conclusion, examinerId: standing.person_id, examinedAt: standing.at });
}

export function createTrialsStore(handle: StoreHandle, newId: () => string): TrialsStore {
  const write = (tx: WriteTx, change: PersonChange, { sampleId, blind, remark, instrumentIds }: TrialEntry, examined: Examined): TrialView => {
    const id = newId();
    tx.orm.insert(knownSampleTrial).values({ id, sampleId, ...examined, blind, remark, at: change.at, personId: change.personId, instrumentIds: JSON.stringify(instrumentIds) }).run();
    const trial = trialById(tx, id)!;
    appendAudit(tx, change, { subject: id, caseId: null, content: { sample: trial.sample, outcome: trial.outcome, examiner: trial.examiner, examinedAt: trial.examinedAt, blind, remark, instruments: trial.instruments, ...(trial.stone !== null && { stone: trial.stone.label, case: trial.stone.caseNumber }) } });
    return trial;
  };
  return {
    async list(period) { return listed(handle.read, period); },
    addSample: (change, sample) => handle.transactResult((tx) => {
      if (tx.get('SELECT 1 FROM known_sample WHERE label = @label COLLATE NOCASE', { label: sample.label }) !== undefined) return err('label-taken');
      const id = newId();
      tx.orm.insert(knownSample).values({ id, ...sample, createdAt: change.at, createdBy: change.personId }).run();
      appendAudit(tx, change, { subject: id, caseId: null, content: { ...sample } });
      return ok(sampleById(tx, id)!);
    }),
    withdraw: (change, trialId, reason) => handle.transactResult((tx) => {
      const trial = trialById(tx, trialId);
      if (trial === null) return err('no-trial');
      if (trial.withdrawn !== null) return err('taken-back');
      tx.orm.insert(knownSampleTrialWithdrawal).values({ id: newId(), trialId, reason, at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: trialId, caseId: null, content: { sample: trial.sample, outcome: trial.outcome, examinedAt: trial.examinedAt, reason, ...(trial.stone !== null && { stone: trial.stone.label, case: trial.stone.caseNumber }) } });
      return ok(trialById(tx, trialId)!);
    }),
    withdrawSample: (change, sampleId, { reason, originWrong }) => handle.transactResult((tx) => {
      const sample = usable(tx, sampleId);
      if (!sample.ok) return sample;
      tx.orm.insert(knownSampleWithdrawal).values({ id: newId(), sampleId, reason, at: change.at, personId: change.personId, originWrong }).run();
      appendAudit(tx, change, { subject: sampleId, caseId: null, content: { label: sample.value.label, reason, originWrong } });
      return ok(sampleById(tx, sampleId)!);
    }),
    addFromStone: (change, trial) => handle.transactResult((tx) => {
      const sample = usable(tx, trial.sampleId);
      if (!sample.ok) return sample;
      if (!instrumentsThere(tx, trial.instrumentIds)) return err('no-instrument');
      const settled = settledStone(tx, trial.caseNumber, trial.stoneLabel);
      if (settled.ok && trial.blind && settled.value.examinerId === change.personId) return err('not-blind');
      return settled.ok ? ok(write(tx, change, trial, settled.value)) : settled;
    }),
    addByHand: (change, trial) => handle.transactResult((tx) => {
      const sample = usable(tx, trial.sampleId);
      if (!sample.ok) return sample;
      if (!instrumentsThere(tx, trial.instrumentIds)) return err('no-instrument');
      if (tx.get('SELECT 1 FROM person WHERE id = @id', { id: trial.examinerId }) === undefined) return err('no-person');
      if (trial.blind && trial.examinerId === change.personId) return err('not-blind');
      const examinedAt = startOfDay(trial.examinedOn, theLaboratory(tx).zone);
      if (examinedAt > change.at) return err('in-future');
      return ok(write(tx, change, trial, { stoneId: null, outcome: trial.outcome, examinerId: trial.examinerId, examinedAt }));
    }),
  };
}
