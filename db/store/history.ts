import { mayBeWithheld } from '../../app/conclusions/withhold.ts';
import type { HistoryFilter, HistoryRow } from '../../app/contract/history.ts';
import type { Output } from '../../app/contract/index.ts';
import type { HistorySort, SortedBy } from '../../app/contract/list-page.ts';
import { addDays, dayInZone } from '../../app/custody/calendar.ts';
import { startOfDay } from '../../app/custody/zone-instant.ts';
import type { ReadDb, StoreHandle } from '../handle.ts';
import { createListOrders, inOrder, type ListOrders } from '../lists/list-orders.ts';
import { NEWEST, sortStones, type Viewer } from '../lists/stone-sorts.ts';
import { stonesHolding, stonesInOrder } from '../lists/stones-in-order.ts';
import { WITHHELD } from '../search/sealed-sql.ts';
import { searchTerms } from '../search/search-words.ts';
import { theLaboratory } from './laboratory.ts';
import { withheldAmong, withheldSince } from './second-readings.ts';
import { summaryOf, type StoneSummaryRow } from './stone-summaries.ts';

export type HistoryStore = {
  /** Stones that fit the filter, those of the newest cases first unless sorted otherwise: all are counted, `limit` of them listed from `offset` on. What is withheld from the viewer is neither shown nor looked at. */
  stones(filter: Asked, viewer: string | null): Promise<{ total: number; rows: HistoryRow[] }>;
  /** What the filters offer, by name; `at` (UTC ISO 8601) says what day it is. */
  choices(at: string): Promise<HistoryChoices>;
};

export type HistoryChoices = Output<'history.choices'>;

type Parameters = Record<string, string | number | null>;
type Condition = { readonly sql: string; readonly parameters: Parameters };

const SENT_FURTHER = `EXISTS (SELECT 1 FROM conclusion u WHERE u.stone_id = s.id AND u.conclusion = 'undetermined')`;
const DISAGREED = `EXISTS (SELECT 1 FROM conclusion u JOIN confirmation a ON a.conclusion_id = u.id WHERE u.stone_id = s.id AND a.agrees = 0)`;
const STAGES: Readonly<Record<NonNullable<HistoryFilter['stage']>, string>> = {
  open: 'c.id IS NULL', concluded: 'c.id IS NOT NULL AND f.id IS NULL', confirmed: 'f.agrees = 1', disagreed: 'f.agrees = 0',
};
const PERSON = `(c.person_id = @person OR f.person_id = @person OR EXISTS (SELECT 1 FROM test_run r WHERE r.stone_id = s.id AND r.person_id = @person)
  OR EXISTS (SELECT 1 FROM conclusion u LEFT JOIN confirmation a ON a.conclusion_id = u.id WHERE u.stone_id = s.id AND (u.person_id = @person OR a.person_id = @person)))`;

const FROM = `stone s JOIN case_record n ON n.id = s.case_id JOIN client k ON k.id = n.client_id ${NEWEST} LEFT JOIN person p ON p.id = c.person_id LEFT JOIN person q ON q.id = f.person_id`;
const COLUMNS = `s.rowid AS n, s.id, s.label, s.item_id, s.mounted, s.position, s.shape, s.weight, s.measurements, s.colour_class, 0 AS runs, c.conclusion, f.agrees,
  s.case_id, n.number, k.name AS client_name, n.received_at, n.state, p.name AS concluded_by, q.name AS confirmed_by, ${SENT_FURTHER} AS sent_further, ${DISAGREED} AS disagreed`;

type Row = StoneSummaryRow & {
  n: number; case_id: string; number: string; client_name: string; received_at: string; state: string; concluded_by: string | null; confirmed_by: string | null; sent_further: number; disagreed: number;
};

function rowOf(row: Row): HistoryRow {
  const { id, label, mounted, weight, colourClass, conclusion, stage } = summaryOf(row);
  return {
    id, label, mounted, weight, colourClass, conclusion, stage, caseId: row.case_id, caseNumber: row.number, clientName: row.client_name, receivedAt: row.received_at,
    state: row.state as HistoryRow['state'], concludedBy: row.concluded_by ?? '', confirmedBy: row.confirmed_by ?? '', sentFurther: row.sent_further === 1, disagreed: row.disagreed === 1,
  };
}

const when = (value: unknown, sql: string, parameters: Parameters = {}): Condition[] => (value === null ? [] : [{ sql, parameters }]);

function conditions(filter: HistoryFilter, zone: string, told: Condition[]): Condition[] {
  return [
    ...when(filter.clientId, 'n.client_id = @client', { client: filter.clientId ?? '' }),
    ...(filter.from === null ? [] : [{ sql: 'n.received_at >= @from', parameters: { from: startOfDay(filter.from, zone) } }]),
    ...(filter.to === null ? [] : [{ sql: 'n.received_at < @to', parameters: { to: startOfDay(addDays(filter.to, 1), zone) } }]),
    ...when(filter.state, 'n.state = @state', { state: filter.state ?? '' }),
    ...(filter.stage === null ? [] : [{ sql: STAGES[filter.stage], parameters: {} }]),
    ...when(filter.conclusion, 'c.conclusion = @conclusion', { conclusion: filter.conclusion ?? '' }),
    ...(filter.conclusion === null && filter.sentFurther === null ? [] : told),
    ...when(filter.personId, PERSON, { person: filter.personId ?? '' }),
    ...when(filter.instrumentId, 'EXISTS (SELECT 1 FROM test_run r WHERE r.stone_id = s.id AND r.instrument_id = @instrument)', { instrument: filter.instrumentId ?? '' }),
    ...when(filter.method, 'EXISTS (SELECT 1 FROM test_run r WHERE r.stone_id = s.id AND r.method = @method)', { method: filter.method ?? '' }),
    ...when(filter.colourClass, 's.colour_class = @colour', { colour: filter.colourClass ?? '' }),
    ...when(filter.setting, 's.mounted = @mounted', { mounted: filter.setting === 'mounted' ? 1 : 0 }),
    ...when(filter.sentFurther, `${filter.sentFurther === false ? 'NOT ' : ''}${SENT_FURTHER}`),
    ...when(filter.disagreement, `${filter.disagreement === false ? 'NOT ' : ''}${DISAGREED}`),
  ];
}

/** What a stone was concluded to be is no way to find it for somebody from whom it is withheld. */
function toldTo(viewer: string | null, since: string | null): Condition[] {
  return since === null ? [] : [{ sql: `f.id IS NOT NULL OR c.id IS NULL OR NOT ${WITHHELD('s.id')}`, parameters: { viewer, since } }];
}

type Asked = HistoryFilter & { readonly limit: number; readonly offset?: number; readonly sort?: SortedBy<HistorySort> };

/** The order is made once, of what fits; rows only for the page. */
async function listed(db: ReadDb, orders: ListOrders, { limit, offset = 0, sort = null, ...filter }: Asked, viewer: string | null): Promise<{ total: number; rows: HistoryRow[] }> {
  const { zone, settings } = theLaboratory(db);
  const by: Viewer = { viewer, since: withheldSince(settings) };
  const parts = conditions(filter, zone, toldTo(viewer, by.since));
  const where = parts.map(({ sql }) => `(${sql})`).join(' AND ');
  const parameters: Parameters = Object.assign({}, ...parts.map((part) => part.parameters)) as Parameters;
  const terms = searchTerms(filter.text);
  const what = { list: 'history', where, parameters, terms };
  const plain = await orders.of(what, async () => stonesInOrder(db, {
    joins: parts.some(({ sql }) => /\b[cf]\./.test(sql)) ? NEWEST : '', where, parameters, within: 's.rowid', among: terms.length === 0 ? null : await stonesHolding(db, terms),
  }));
  const order = sort === null ? plain : await orders.of({ ...what, sort, ...by }, () => sortStones(db, plain, sort, by));
  const page = order.slice(offset, offset + limit);
  const rows = inOrder(page, db.all<Row>(`SELECT ${COLUMNS} FROM ${FROM} WHERE s.rowid IN (SELECT value FROM json_each(@page))`, { page: JSON.stringify(page) })).map(rowOf);
  const withheld = withheldAmong(db, viewer, mayBeWithheld(rows));
  return { total: order.length, rows: rows.map((row) => (withheld.has(row.id) ? { ...row, conclusion: null, sentFurther: false } : row)) };
}

export function createHistoryStore(handle: StoreHandle): HistoryStore {
  const db = handle.read;
  const orders = createListOrders(db);
  const named = (sql: string): { id: string; name: string }[] => db.all(`${sql} ORDER BY name COLLATE NOCASE`);
  return {
    stones: (filter, viewer) => listed(db, orders, filter, viewer),
    async choices(at) {
      const { zone } = theLaboratory(db);
      const first = db.get<{ at: string | null }>('SELECT min(received_at) AS at FROM case_record')?.at ?? null;
      const counted = db.get<{ at: string | null }>(`SELECT min(at) AS at FROM (SELECT min(received_at) AS at FROM case_record UNION ALL SELECT min(at) FROM instrument_check UNION ALL SELECT min(examined_at) FROM known_sample_trial)`)?.at ?? null;
      return {
        clients: named('SELECT id, name FROM client k WHERE EXISTS (SELECT 1 FROM case_record n WHERE n.client_id = k.id)'),
        people: named('SELECT id, name FROM person'), instruments: named('SELECT id, name FROM instrument'),
        first: first === null ? null : dayInZone(first, zone), today: dayInZone(at, zone),
        firstCounted: counted === null ? null : dayInZone(counted, zone),
      };
    },
  };
}
