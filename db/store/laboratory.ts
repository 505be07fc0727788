import { eq } from 'drizzle-orm';
import type { LaboratoryView } from '../../app/contract/casebook.ts';
import { sha256Hex } from '../../app/custody/chain.ts';
import { houseSettings, type HouseSettings } from '../../app/domain/house-settings.ts';
import type { Role } from '../../app/domain/role.ts';
import type { Change } from '../change.ts';
import type { ReadDb, StoreHandle, WriteTx } from '../handle.ts';
import { appendAudit } from '../ledger/append-audit.ts';
import { laboratory } from '../schema/index.ts';
import { writeSearch } from '../search/write-search.ts';
import { insertPerson } from './people.ts';

export type Logo = { readonly mediaType: string; readonly bytes: Uint8Array };
export type LaboratoryInput = { readonly name: string; readonly address: string; readonly zone: string; readonly logo: Logo | null };
export type FirstPerson = { readonly name: string; readonly initials: string; readonly roles: readonly Role[] };

export type LaboratoryStore = {
  /** Null in a file that was made and never set up. */
  get(): Promise<LaboratoryView | null>;
  /** Sets up an empty casebook with its laboratory and first person; returns the person's id. Throws where there is one already. */
  create(at: string, input: LaboratoryInput & { readonly isDemonstration: boolean; readonly settings: HouseSettings }, person: FirstPerson): Promise<string>;
  save(change: Change, input: LaboratoryInput & { readonly settings: HouseSettings }): Promise<LaboratoryView>;
};

const ONE = 1;

/** Whatever a window sends, since when the second person reads first is the casebook's own word: a break in it would count as two readings what was seen. */
function withSince<T extends { readonly settings: HouseSettings }>(input: T, before: HouseSettings | null, at: string): T {
  const since = !input.settings.secondReadsFirst ? null : before?.secondReadsFirst === true ? before.secondReadsFirstSince ?? at : at;
  return { ...input, settings: { ...input.settings, secondReadsFirstSince: since } };
}

/** Stones with a conclusion that was withheld: once it is withheld no more, it can be found. */
const WAS_SEALED = 'SELECT DISTINCT c.stone_id AS id FROM conclusion c WHERE c.at >= @since AND NOT EXISTS (SELECT 1 FROM confirmation f WHERE f.conclusion_id = c.id)';

/** A casebook in which the setting was switched on before its instant was kept: from now on first conclusions are withheld. */
export function keepSince(handle: StoreHandle, at: string): void {
  const missing = `SELECT 1 FROM laboratory WHERE json_valid(settings) AND json_extract(settings, '$.secondReadsFirst') = 1 AND json_extract(settings, '$.secondReadsFirstSince') IS NULL`;
  if (handle.read.get(missing) === undefined) return;
  handle.transactNow((tx) => {
    tx.run(`UPDATE laboratory SET settings = json_set(settings, '$.secondReadsFirstSince', @at)`, { at });
    appendAudit(tx, { at, personId: null, operation: 'laboratory.save' }, { subject: 'laboratory', caseId: null, content: { secondReadsFirstSince: at } });
  });
}

/** The instant the casebook was begun, by which its copies and checkpoints are told; undefined before there is a laboratory. Read alone: the other settings may be what was damaged. */
export const begunAt = (db: Pick<ReadDb, 'get'>): string | undefined => db.get<{ at: string }>('SELECT created_at AS at FROM laboratory')?.at;

/** The laboratory as it stands now, or null before it is set up. */
export function readLaboratory(db: ReadDb | WriteTx): LaboratoryView | null {
  const row = db.orm.select().from(laboratory).where(eq(laboratory.id, ONE)).get();
  if (!row) return null;
  return {
    name: row.name, address: row.address, zone: row.zone, isDemonstration: row.isDemonstration, createdAt: row.createdAt,
    logo: row.logo && row.logoType ? { mediaType: row.logoType, bytes: new Uint8Array(row.logo) } : null,
    settings: houseSettings.parse(JSON.parse(row.settings)),
  };
}

/** The same where the caller is past the door: a casebook without a laboratory is a fault there. */
export function theLaboratory(db: ReadDb | WriteTx): LaboratoryView {
  const view = readLaboratory(db);
  if (!view) throw new Error('the casebook has no laboratory');
  return view;
}

function columns(input: LaboratoryInput & { readonly settings: HouseSettings }) {
  return {
    name: input.name, address: input.address, zone: input.zone, settings: JSON.stringify(input.settings),
    logo: input.logo ? Buffer.from(input.logo.bytes) : null, logoType: input.logo?.mediaType ?? null,
  };
}

/** What the audit ledger keeps of it: the logo by its digest. */
const facts = (input: LaboratoryInput & { readonly settings: HouseSettings }) => ({
  name: input.name, address: input.address, zone: input.zone, settings: input.settings, logo: input.logo ? sha256Hex(input.logo.bytes) : null,
});

export function createLaboratoryStore(handle: StoreHandle, newId: () => string): LaboratoryStore {
  return {
    async get() { return readLaboratory(handle.read); },
    create: (at, given, person) => handle.transact((tx) => {
      const input = withSince(given, null, at);
      const change: Change = { at, personId: null, operation: 'casebook.create' };
      tx.orm.insert(laboratory).values({ id: ONE, ...columns(input), isDemonstration: input.isDemonstration, createdAt: at }).run();
      appendAudit(tx, change, { subject: 'laboratory', caseId: null, content: { ...facts(input), isDemonstration: input.isDemonstration } });
      return insertPerson(tx, change, newId(), { ...person, active: true });
    }),
    save: (change, given) => handle.transact((tx) => {
      const before = theLaboratory(tx);
      const input = withSince(given, before.settings, change.at);
      tx.orm.update(laboratory).set(columns(input)).where(eq(laboratory.id, ONE)).run();
      appendAudit(tx, change, { subject: 'laboratory', caseId: null, content: { before: facts(before), after: facts(input) } });
      const { secondReadsFirstSince: since } = before.settings;
      if (since !== null && !input.settings.secondReadsFirst) writeSearch(tx, 'stone', tx.all<{ id: string }>(WAS_SEALED, { since }).map(({ id }) => id));
      return theLaboratory(tx);
    }),
  };
}
