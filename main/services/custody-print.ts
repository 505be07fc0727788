import type { CustodyView } from '../../app/contract/custody.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { currentCustody } from '../../app/custody/current-custody.ts';
import { buildCustodyPages } from '../../app/report/build-custody-pages.ts';
import { buildHandOver, type HandOverLine } from '../../app/report/build-hand-over.ts';
import { ok, type Result } from '../../app/result.ts';
import type { ReadDb } from '../../db/handle.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import { custodyStatements } from '../../db/store/case-records.ts';
import { caseView } from '../../db/store/case-view.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import { personById } from '../../db/store/people.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { notFound, refused } from './failures.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import { fileName, logoOf } from './print-services.ts';
import type { Services } from './service.ts';

type Deps = IntakeDeps & { readonly pool: Pick<TaskPool, 'run'> };

/** The lines of a form; each case is read once, however many of its items are on it. */
function linesOf(db: ReadDb, entries: readonly CustodyView[]): HandOverLine[] {
  const cases = new Map([...new Set(entries.map((entry) => entry.caseId))].map((caseId) => [caseId, {
    items: caseView(db, caseId)?.parcels.flatMap((parcel) => parcel.items) ?? [],
    statements: custodyStatements(db, caseId).map(({ statement }) => statement),
  }]));
  return entries.flatMap((entry) => {
    const { items, statements } = cases.get(entry.caseId)!;
    const item = items.find((one) => one.id === entry.itemId);
    // The seal it was under, and what it weighed, once this entry was written.
    const then = currentCustody(statements.filter((one) => one.item === entry.itemId && one.seq <= entry.seq));
    return item === undefined ? [] : [{ entry, item, seal: then?.seal ?? '', lastWeight: then?.lastWeight ?? null }];
  });
}

async function handOverLines(casebook: Casebook, seqs: readonly number[]): Promise<Result<HandOverLine[], Failure>> {
  const entries = await casebook.custody.bySeq(seqs);
  return entries === null ? notFound('One of these custody entries') : ok(linesOf(casebook.handle.read, entries));
}

/** Papers drawn from the custody ledger, away from the main thread. */
export function createCustodyPrintServices(deps: Deps): Pick<Services, 'print.custody' | 'print.handOver'> {
  return {
    'print.custody': reading(deps, async (casebook, { caseId, itemId }, call) => {
      const db = casebook.handle.read;
      const view = caseView(db, caseId);
      if (view === null) return notFound('That case');
      if (itemId !== null && !view.parcels.some((parcel) => parcel.items.some((item) => item.id === itemId))) return notFound('That item');
      const laboratory = theLaboratory(db);
      const printedBy = personById(db, call.session.personId ?? '')?.name ?? '';
      const model = buildCustodyPages({ laboratory, logo: logoOf(laboratory), view, itemId, entries: custodyStatements(db, caseId), printedBy, at: deps.now().toISOString() });
      const drawn = await deps.pool.run('render-custody', model, { signal: call.signal });
      return drawn.ok ? ok({ name: fileName('Chain of custody', model.subject), pdf: drawn.value }) : taskFailure(drawn.error);
    }),
    'print.handOver': reading(deps, async (casebook, { seqs }, call) => {
      const lines = await handOverLines(casebook, seqs);
      if (!lines.ok) return lines;
      const laboratory = theLaboratory(casebook.handle.read);
      const model = buildHandOver(laboratory, logoOf(laboratory), lines.value);
      if (!model.ok) return refused(model.error, 'Choose the entries of one hand-over in the custody ledger.');
      const drawn = await deps.pool.run('render-hand-over', model.value, { signal: call.signal });
      return drawn.ok ? ok({ name: fileName(model.value.title, lines.value[0]!.entry.caseNumber), pdf: drawn.value }) : taskFailure(drawn.error);
    }),
  };
}
