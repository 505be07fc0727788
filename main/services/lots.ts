import type { Failure } from '../../app/contract/failure.ts';
import type { LotView } from '../../app/contract/lots.ts';
import { foldResults } from '../../app/lots/fold-results.ts';
import { makePlan } from '../../app/lots/make-plan.ts';
import type { LotContent, SieveClass } from '../../app/lots/lot-record.ts';
import { entriesToAdd, readResults, readTable } from '../../app/lots/read-results.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { theLaboratory } from '../../db/store/laboratory.ts';
import type { LotNow } from '../../db/store/lots.ts';
import { notFound, refused } from './failures.ts';
import { lotViewOf } from './lot-view.ts';
import type { Services } from './service.ts';
import { asFailure, changing, reading, type ChangingWork, type Work, type WorkDeps } from './work-context.ts';

type LotServices = Pick<Services, 'lots.get' | 'lots.results' | 'lots.count' | 'lots.plan' | 'lots.enter' | 'lots.import' | 'lots.split'>;

async function theLot({ stores, casebook }: Work, itemId: string): Promise<Result<LotView, Failure>> {
  const now = await stores.lots.get(itemId);
  return now === null ? notFound('That lot') : ok(lotViewOf(casebook.handle.read, now));
}

async function write(work: ChangingWork, itemId: string, make: (now: LotNow) => Result<LotContent, Failure>): Promise<Result<LotView, Failure>> {
  const written = await work.stores.lots.write(work.change, itemId, make);
  return written.ok ? theLot(work, itemId) : written;
}

const invalid = (field: string, message: string) => asFailure({ code: 'invalid-input', field, message, next: 'See the sentence beside the field.' });

/** Sizes must be plates of the house's set, the upper one larger. */
function wrongSieve(sieves: readonly SieveClass[], work: Work): ReturnType<typeof invalid> | null {
  const plates = theLaboratory(work.casebook.handle.read).settings.sieves;
  const place = (plate: string | null, open: number): number => (plate === null ? open : plates.findIndex((one) => one.plate === plate));
  for (const [i, { over, through }] of sieves.entries()) {
    const low = place(over, -0.5);
    const high = place(through, plates.length);
    if (low === -1 || high === -1) return invalid(`sieves.${i}`, 'This plate is not in the house’s set of sieves.');
    if (high <= low) return invalid(`sieves.${i}`, 'The stones stay on the smaller plate and fall through the larger one.');
  }
  return null;
}

export function createLotServices(deps: WorkDeps): LotServices {
  return {
    'lots.get': reading(deps, 'lots.get', ({ itemId }, work) => theLot(work, itemId)),

    'lots.results': reading(deps, 'lots.results', async ({ itemId }, { stores }) => {
      const now = await stores.lots.get(itemId);
      return now === null ? notFound('That lot') : ok(foldResults(now.book));
    }),

    'lots.count': changing(deps, 'lots.count', async ({ itemId, ...content }, work) =>
      wrongSieve(content.sieves, work) ?? write(work, itemId, () => ok({ kind: 'count', ...content }))),

    'lots.plan': changing(deps, 'lots.plan', async ({ itemId, ...wanted }, work) => write(work, itemId, ({ count }) => {
      if (count === null) return refused('This lot has no count.', 'Count its stones first: the plan depends on their number.');
      const made = makePlan(count, wanted);
      return made.ok ? made : invalid(made.error.field, made.error.message);
    })),

    'lots.enter': changing(deps, 'lots.enter', async ({ itemId, source, entries, note }, { stores, change }) =>
      stores.lots.write(change, itemId, () => ok({ kind: 'results', source, file: null, entries, note }))),

    'lots.import': changing(deps, 'lots.import', async ({ itemId, name, bytes, mapping, replace, note }, { stores, change }) => {
      const table = readTable(bytes, mapping.separator);
      if (!table.ok) return err({ code: 'unreadable', message: table.error.message, next: 'Nothing was kept. Export the list anew and import it again.' });
      const outcome = { entered: 0, same: 0, differing: 0 };
      const written = await stores.lots.write(change, itemId, ({ book, count }) => {
        if (count === null) return refused('This lot has no count.', 'Count its stones first: results are entered by the stone’s number.');
        const read = readResults(table.value, mapping, count);
        const unknown = read.unknownWords[0];
        if (unknown !== undefined) return refused(`Nobody has said what “${unknown.word}” means.`, 'Choose an outcome for every word of the list, or leave its rows out.');
        const { entries, same, differing } = entriesToAdd(read, new Map(foldResults(book).map((one) => [one.number, one.outcome])), replace);
        if (entries.length === 0) return refused('This list holds nothing new for the lot.', same > 0 ? 'All of it is entered already.' : 'Choose other columns, or another file.');
        Object.assign(outcome, { entered: entries.length, same, differing: differing.length });
        return ok({ kind: 'results', source: 'imported', file: null, entries, note });
      }, { name, bytes });
      if (!written.ok) return written;
      const kept = (await stores.lots.get(itemId))?.book.at(-1)?.content;
      return ok({ ...outcome, sha256: kept?.kind === 'results' ? kept.file?.sha256 ?? '' : '' });
    }),

    'lots.split': changing(deps, 'lots.split', async ({ itemId, ...content }, work) => write(work, itemId, () => ok({ kind: 'split', ...content }))),
  };
}
