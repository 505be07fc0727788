import { instrumentMemory, type CheckNumber, type InstrumentMemory, type InstrumentView } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { instrumentStateAt } from '../../app/runs/instrument-state.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { scaleView } from '../../app/contract/calibration.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { instrument, instrumentCheck } from '../schema/index.ts';
import { eq } from 'drizzle-orm';
import { calibrationAt } from './calibrations-read.ts';

export type InstrumentInput = {
  readonly id: string | null; readonly name: string; readonly methods: readonly MethodId[]; readonly serial: string; readonly place: string;
  readonly remembers: InstrumentMemory; readonly checkEveryDays: number; readonly active: boolean;
};
export type CheckInput = { readonly instrumentId: string; readonly passed: boolean; readonly reference: string; readonly outcome: string; /** Null where the check gave no number. */ readonly measured: CheckNumber | null; /** The first after a service: limits of its course begin anew. */ readonly afterService: boolean };

type Row = {
  id: string; name: string; methods: string; serial: string; place: string; remembers: string; check_every_days: number; active: number;
  checked_at: string | null; checked_by: string | null; passed: number | null; reference: string | null; outcome: string | null;
};

/** Each instrument with its newest check up to an instant. */
const WITH_LAST_CHECK = `
  SELECT i.id, i.name, i.methods, i.serial, i.place, i.remembers, i.check_every_days, i.active,
         c.at AS checked_at, p.name AS checked_by, c.passed, c.reference, c.outcome
  FROM instrument i
  LEFT JOIN instrument_check c ON c.rowid = (
    SELECT k.rowid FROM instrument_check k WHERE k.instrument_id = i.id AND k.at <= @at ORDER BY k.at DESC, k.rowid DESC LIMIT 1)
  LEFT JOIN person p ON p.id = c.person_id`;

function viewOf(db: ReadDb | WriteTx, row: Row, at: string): InstrumentView {
  const lastCheck = row.checked_at === null ? null : {
    at: row.checked_at, by: row.checked_by ?? '', passed: row.passed === 1, reference: row.reference ?? '', outcome: row.outcome ?? '',
  };
  return {
    id: row.id, name: row.name, methods: JSON.parse(row.methods) as MethodId[], serial: row.serial, place: row.place,
    remembers: instrumentMemory.parse(JSON.parse(row.remembers)), checkEveryDays: row.check_every_days, active: row.active === 1,
    state: instrumentStateAt(lastCheck, row.check_every_days, at), lastCheck,
    scale: scaleView.nullable().parse(calibrationAt(db, row.id, at)),
  };
}

/** All instruments as they stand at an instant (UTC ISO 8601), those in use first, by name. */
export function instrumentsAt(db: ReadDb | WriteTx, at: string): InstrumentView[] {
  return db.all<Row>(`${WITH_LAST_CHECK} ORDER BY i.active DESC, i.name COLLATE NOCASE`, { at }).map((row) => viewOf(db, row, at));
}

export function instrumentAt(db: ReadDb | WriteTx, id: string, at: string): InstrumentView | null {
  const row = db.get<Row>(`${WITH_LAST_CHECK} WHERE i.id = @id`, { id, at });
  return row === undefined ? null : viewOf(db, row, at);
}

/** What the instrument will offer for its next run; inside the caller's transaction, with its own entry in the audit ledger. */
export function rememberForNextRun(tx: WriteTx, change: Change, instrumentId: string, remembers: InstrumentMemory): void {
  tx.orm.update(instrument).set({ remembers: JSON.stringify(remembers) }).where(eq(instrument.id, instrumentId)).run();
  appendAudit(tx, change, { subject: instrumentId, caseId: null, content: { remembers } });
}

/** A laser's true wavelength, nm in air, and the curve it was found in. */
export type LaserInput = Omit<CheckInput, 'measured' | 'afterService'> & {
  readonly laserNm: number; readonly uncertaintyNm: number; readonly foundNm: number; readonly nominalNm: number; readonly fileName: string; readonly fileSha256: string;
};

export type InstrumentsStore = {
  list(at: string): Promise<InstrumentView[]>;
  get(id: string, at: string): Promise<InstrumentView | null>;
  /** Another instrument with this name, ignoring case. */
  nameTaken(name: string, exceptId: string | null): Promise<boolean>;
  /** Null where `input.id` names no instrument. */
  save(change: Change, input: InstrumentInput): Promise<InstrumentView | null>;
  /** Null where there is no such instrument. */
  recordCheck(change: Change, input: CheckInput): Promise<InstrumentView | null>;
  /** Keeps the check and lets the instrument remember the laser, in one transaction; null where there is no such instrument. */
  keepLaser(change: Change, input: LaserInput): Promise<InstrumentView | null>;
};

export function createInstrumentsStore(handle: StoreHandle, newId: () => string): InstrumentsStore {
  return {
    async list(at) { return instrumentsAt(handle.read, at); },
    async get(id, at) { return instrumentAt(handle.read, id, at); },
    async nameTaken(name, exceptId) {
      return handle.read.get('SELECT 1 AS one FROM instrument WHERE name = @name COLLATE NOCASE AND id IS NOT @exceptId', { name, exceptId }) !== undefined;
    },
    save: (change, input) => handle.transact((tx) => {
      const { id: givenId, name, serial, place, checkEveryDays, active } = input;
      const values = { name, serial, place, checkEveryDays, active, methods: JSON.stringify(input.methods), remembers: JSON.stringify(input.remembers) };
      const id = givenId ?? newId();
      if (givenId === null) tx.orm.insert(instrument).values({ id, ...values, createdAt: change.at }).run();
      else if (tx.orm.update(instrument).set(values).where(eq(instrument.id, id)).run().changes === 0) return null;
      appendAudit(tx, change, { subject: id, caseId: null, content: { name, methods: input.methods, serial, place, checkEveryDays, active, remembers: input.remembers } });
      return instrumentAt(tx, id, change.at);
    }),
    recordCheck: (change, { measured, ...input }) => handle.transact((tx) => {
      if (change.personId === null) throw new Error('recordCheck: a check needs a person');
      if (instrumentAt(tx, input.instrumentId, change.at) === null) return null;
      tx.orm.insert(instrumentCheck).values({ id: newId(), ...input, ...measured, at: change.at, personId: change.personId }).run();
      appendAudit(tx, change, { subject: input.instrumentId, caseId: null, content: { passed: input.passed, reference: input.reference, outcome: input.outcome, ...(measured !== null && { measured }), ...(input.afterService && { afterService: true }) } });
      return instrumentAt(tx, input.instrumentId, change.at);
    }),
    keepLaser: (change, { instrumentId, passed, reference, outcome, laserNm, ...measured }) => handle.transact((tx) => {
      if (change.personId === null) throw new Error('keepLaser: a check needs a person');
      const before = instrumentAt(tx, instrumentId, change.at);
      if (before === null) return null;
      const remembers = { ...before.remembers, laserNm };
      tx.orm.insert(instrumentCheck).values({
        id: newId(), instrumentId, at: change.at, personId: change.personId, passed, reference, outcome,
        quantity: 'wavelength of the laser', unit: 'nm', value: laserNm, expected: measured.nominalNm,
      }).run();
      tx.orm.update(instrument).set({ remembers: JSON.stringify(remembers) }).where(eq(instrument.id, instrumentId)).run();
      appendAudit(tx, change, { subject: instrumentId, caseId: null, content: { passed, reference, outcome, laserNm, ...measured, remembers } });
      return instrumentAt(tx, instrumentId, change.at);
    }),
  };
}
