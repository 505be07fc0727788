import type { Whereabouts } from '../../app/contract/custody.ts';
import type { Output } from '../../app/contract/index.ts';
import { dayInZone, hasPassed } from '../../app/custody/calendar.ts';
import type { CurrentCustody } from '../../app/custody/current-custody.ts';
import type { ReadDb } from '../handle.ts';
import { custodyInHouse } from './custody-now.ts';
import { theLaboratory } from './laboratory.ts';

type ItemRow = { itemId: string; caseId: string; caseNumber: string; label: string; kind: Whereabouts['kind']; declared: string; clientName: string };

const ITEMS = `SELECT i.id AS itemId, i.case_id AS caseId, n.number AS caseNumber, i.label, i.kind, i.declared, k.name AS clientName
  FROM item i JOIN case_record n ON n.id = i.case_id JOIN client k ON k.id = n.client_id WHERE n.state != 'returned' ORDER BY n.number, length(i.label), i.label`;

function oneItem(row: ItemRow, now: CurrentCustody, today: string): Whereabouts {
  const { place, holder, seal, at, differs, out } = now;
  return { ...row, place, holder, seal, since: out?.since ?? at, seenAt: at, differs, out: out === null ? null : { ...out, overdue: hasPassed(out.dueBack, today) } };
}

/** Every item that has not gone back to its client, and the places that are offered for putting things away. */
export function whereaboutsAt(db: ReadDb, at: string): Output<'custody.whereabouts'> {
  const { zone, settings } = theLaboratory(db);
  const today = dayInZone(at, zone);
  const custody = custodyInHouse(db);
  const rows = db.all<ItemRow>(ITEMS).flatMap((row) => {
    const now = custody.get(row.itemId);
    return now === undefined || now.returned ? [] : [oneItem(row, now, today)];
  });
  const inUse = rows.map((row) => row.place).filter((place) => place !== '');
  return { today, places: [...new Set([...settings.places, ...inUse.sort()])], rows };
}
