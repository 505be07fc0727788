import type { ConclusionId } from '../../app/domain/conclusion.ts';
import type { HouseSettings } from '../../app/domain/house-settings.ts';
import type { ReadDb, WriteTx } from '../handle.ts';
import { sealedBy, WITHHELD } from '../search/sealed-sql.ts';
import { readLaboratory } from './laboratory.ts';

/** From which instant on a first conclusion is withheld; null where the house does not ask for two readings. */
export const withheldSince = ({ secondReadsFirst, secondReadsFirstSince }: HouseSettings): string | null => (secondReadsFirst ? secondReadsFirstSince : null);

const NONE: ReadonlySet<string> = new Set();
type Ids = { id: string }[];
const setOf = (rows: Ids): ReadonlySet<string> => new Set(rows.map(({ id }) => id));

function since(db: ReadDb | WriteTx): string | null {
  const laboratory = readLaboratory(db);
  return laboratory === null ? null : withheldSince(laboratory.settings);
}

/** Those of some stones whose conclusion is withheld from a person. */
export function withheldAmong(db: ReadDb | WriteTx, viewer: string | null, stoneIds: readonly string[]): ReadonlySet<string> {
  const from = stoneIds.length === 0 ? null : since(db);
  return from === null ? NONE : setOf(db.all<{ id: string }>(`SELECT v.value AS id FROM json_each(@ids) v WHERE ${WITHHELD('v.value')}`, { ids: JSON.stringify(stoneIds), viewer, since: from }));
}

/** Those of some stones whose conclusion is shown to nobody but who concluded. */
export function sealedAmong(db: ReadDb | WriteTx, stoneIds: readonly string[]): ReadonlySet<string> {
  const from = stoneIds.length === 0 ? null : since(db);
  return from === null ? NONE : setOf(db.all<{ id: string }>(`SELECT v.value AS id FROM json_each(@ids) v WHERE ${sealedBy('v.value', '@since')}`, { ids: JSON.stringify(stoneIds), since: from }));
}

/** Those of some conclusions that are withheld from a person. */
export function conclusionsWithheld(db: ReadDb, viewer: string | null, conclusionIds: readonly string[]): ReadonlySet<string> {
  const from = conclusionIds.length === 0 ? null : since(db);
  return from === null ? NONE : setOf(db.all<{ id: string }>(`SELECT c.id FROM conclusion c WHERE c.id IN (SELECT value FROM json_each(@ids)) AND ${WITHHELD('c.stone_id')}`, { ids: JSON.stringify(conclusionIds), viewer, since: from }));
}

export type Unread = { readonly label: string; readonly caseNumber: string };

/** Stones of some cases whose conclusion is withheld from a person, by case and label. */
export function withheldOfCases(db: ReadDb, viewer: string | null, caseIds: readonly string[]): Unread[] {
  const from = caseIds.length === 0 ? null : since(db);
  return from === null ? [] : db.all<Unread>(`SELECT s.label, n.number AS caseNumber FROM stone s JOIN case_record n ON n.id = s.case_id
    WHERE s.case_id IN (SELECT value FROM json_each(@ids)) AND ${WITHHELD('s.id')} ORDER BY n.rowid, s.rowid`, { ids: JSON.stringify(caseIds), viewer, since: from });
}

/** What a person stated of a stone before its first conclusion was shown to them: null where nothing was read, `outcome` null where they asked to see it without. */
export function readingOf(db: ReadDb | WriteTx, viewer: string | null, conclusion: string): { readonly outcome: ConclusionId | null; readonly at: string } | null {
  return db.get<{ outcome: ConclusionId | null; at: string }>('SELECT outcome, at FROM second_reading WHERE conclusion_id = @conclusion AND person_id IS @viewer', { conclusion, viewer }) ?? null;
}
