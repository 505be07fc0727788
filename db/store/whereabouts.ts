import type { Whereabouts } from '../../app/contract/custody.ts';
import type { Output } from '../../app/contract/index.ts';
import { dayInZone, hasPassed } from '../../app/custody/calendar.ts';
import type { CurrentCustody } from '../../app/custody/current-custody.ts';
import type { ReadDb } from '../handle.ts';
import { inSlices } from '../lists/in-slices.ts';
import { custodyOfCases } from './custody-now.ts';
import { theLaboratory } from './laboratory.ts';

type ItemRow = { itemId: string; caseId: string; caseNumber: string; label: string; kind: Whereabouts['kind']; declared: string; clientName: string };

const ITEMS = `SELECT i.id AS itemId, i.case_id AS caseId, n.number AS caseNumber, i.label, i.kind, i.declared, k.name AS clientName
  FROM item i JOIN case_record n ON n.id = i.case_id JOIN client k ON k.id = n.client_id WHERE n.id IN (SELECT value FROM json_each(@ids)) ORDER BY n.number, length(i.label), i.label`;

function oneItem(row: ItemRow, now: CurrentCustody, today: string): Whereabouts {
  const { place, holder, seal, at, differs, out } = now;
  return { ...row, place, holder, seal, since: out?.since ?? at, seenAt: at, differs, out: out === null ? null : { ...out, overdue: hasPassed(out.dueBack, today) } };
}

/** What was returned long ago is most of a casebook: the index on state leaves it unread. */
export const CASES_IN_HOUSE = `SELECT n.id FROM case_record n WHERE n.state IN ('open', 'reported') ORDER BY n.number`;

function itemsOf(db: ReadDb, caseIds: readonly string[], today: string): Whereabouts[] {
  const custody = custodyOfCases(db, caseIds);
  return db.all<ItemRow>(ITEMS, { ids: JSON.stringify(caseIds) }).flatMap((row) => {
    const now = custody.get(row.itemId);
    return now === undefined || now.returned ? [] : [oneItem(row, now, today)];
  });
}

/** Every item that has not gone back to its client, and the places that are offered for putting things away. */
export async function whereaboutsAt(db: ReadDb, at: string): Promise<Output<'custody.whereabouts'>> {
  const { zone, settings } = theLaboratory(db);
  const today = dayInZone(at, zone);
  const rows = await inSlices(db.all<{ id: string }>(CASES_IN_HOUSE).map(({ id }) => id), (ids) => itemsOf(db, ids, today));
  const inUse = new Set(rows.map((row) => row.place).filter((place) => place !== ''));
  return { today, places: [...new Set([...settings.places, ...[...inUse].sort()])], rows };
}
