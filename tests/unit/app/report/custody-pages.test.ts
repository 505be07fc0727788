import { describe, expect, test } from 'vitest';
import type { CustodyDocument } from '../../../../app/bundle/case-document.ts';
import type { CustodyView } from '../../../../app/contract/custody.ts';
import { entryHash, GENESIS } from '../../../../app/custody/chain.ts';
import type { CustodyContent } from '../../../../app/domain/custody-event.ts';
import { buildCustodyPages } from '../../../../app/report/build-custody-pages.ts';
import { buildHandOver } from '../../../../app/report/build-hand-over.ts';
import { renderCustody } from '../../../../main/print/render-custody.ts';
import { renderHandOver } from '../../../../main/print/render-hand-over.ts';
import { readPdf } from '../../main/print/read-pdf.ts';
import { sampleCase, sampleLaboratory } from '../../main/print/sample-case.ts';

const view = sampleCase();
const item = view.parcels[0]!.items[0]!;
const laboratory = sampleLaboratory();

function chained(contents: readonly CustodyContent[]): CustodyDocument['entries'] {
  let previous = GENESIS;
  return contents.map((content, i) => {
    const statement = { seq: i + 1, at: `2026-11-2${i}T09:00:00.000Z`, person: 'p-1', case: view.id, item: item.id, content };
    const hash = entryHash(previous, statement);
    const entry = { statement: { ...statement, previous }, hash, personName: 'Ada Invented', itemLabel: item.label };
    previous = hash;
    return entry;
  });
}

const CONTENTS: readonly CustodyContent[] = [
  { event: 'received', from: 'the client', to: 'Ada Invented', place: 'safe 2' },
  { event: 'sealed', seal: 'S-9' },
  { event: 'handed-over', from: 'Ada Invented', to: 'Courier', outside: true, purpose: 'infrared elsewhere', dueBack: '2026-11-27' },
];
const pages = (entries: CustodyDocument['entries']) => buildCustodyPages({ laboratory, logo: null, view, itemId: item.id, entries, printedBy: 'Ada Invented', at: '2026-11-25T09:00:00.000Z' });

describe('the chain of custody on paper', () => {
  test('shows every entry with its digest and says that they hold', async () => {
    const entries = chained(CONTENTS);
    const model = pages(entries);
    expect(model.check.holds).toBe(true);
    const read = await readPdf(await renderCustody(model));
    const text = read.pages.join(' ').replace(/\s+/g, ' ');
    // A day and its time are one: broken over two lines, the table is twice as long and hard to read down.
    for (const { at } of model.items[0]!.entries) expect(read.lines.flat().some((line) => line.includes(at)), at).toBe(true);
    for (const { hash } of entries) expect(text).toContain(hash);
    expect(text).toContain('handed over from Ada Invented to Courier, out of the house, expected back by 27 Nov 2026, for infrared elsewhere');
  });
  test('names an entry that was changed after writing', () => {
    const entries = chained(CONTENTS);
    const altered = entries.map((entry, i) => (i === 1 ? { ...entry, statement: { ...entry.statement, content: { ...entry.statement.content, seal: 'S-8' } } } : entry));
    const model = pages(altered);
    expect(model.check.holds).toBe(false);
    expect(model.items[0]!.doubts).toEqual(['Entry 2 no longer gives its digest: changed after writing.']);
  });
  test('the same content gives the same bytes', async () => {
    const model = pages(chained(CONTENTS));
    expect(await renderCustody(model)).toEqual(await renderCustody(model));
  });
});

describe('the form that both hands sign', () => {
  const entryOf = ({ statement, hash, personName }: CustodyDocument['entries'][number]): CustodyView => ({
    seq: statement.seq, at: statement.at, caseId: view.id, caseNumber: view.number, itemId: item.id, itemLabel: item.label, person: personName, content: statement.content, previous: statement.previous, hash,
  });
  test('lists the item with its seal and names both hands', async () => {
    const form = buildHandOver(laboratory, null, [{ entry: entryOf(chained(CONTENTS)[2]!), item, seal: 'S-9', lastWeight: null }]);
    expect(form).toMatchObject({ ok: true, value: { from: 'Ada Invented', to: 'Courier', dueBack: '27 Nov 2026', items: [{ seal: 'S-9', entry: 3 }] } });
    const text = (await readPdf(await renderHandOver(form.ok ? form.value : (undefined as never)))).pages.join(' ');
    for (const words of ['Hand-over', 'Given by', 'Taken by', 'Courier', 'S-9', 'infrared elsewhere', item.declared]) expect(text).toContain(words);
  });
  test('tells the newest weight on record where nothing was weighed at the hand-over, and the one of the receipt where there is no other', () => {
    const weightOf = (lastWeight: { weight: number; unit: 'ct' | 'g' } | null) => {
      const form = buildHandOver(laboratory, null, [{ entry: entryOf(chained(CONTENTS)[2]!), item: { ...item, grossWeight: 42_130, weightUnit: 'g' }, seal: '', lastWeight }]);
      return form.ok ? form.value.items[0]!.weight : form.error;
    };
    expect([weightOf({ weight: 10_100, unit: 'ct' }), weightOf(null)]).toEqual(['1.01 ct', expect.stringContaining(' g')]);
  });
  test('is refused for what did not change hands, and for two hand-overs at once', () => {
    const [received, sealed, out] = chained(CONTENTS).map(entryOf);
    expect(buildHandOver(laboratory, null, [{ entry: sealed!, item, seal: '', lastWeight: null }]).ok).toBe(false);
    expect(buildHandOver(laboratory, null, [{ entry: received!, item, seal: '', lastWeight: null }]).ok).toBe(false);
    expect(buildHandOver(laboratory, null, [{ entry: out!, item, seal: '', lastWeight: null }, { entry: { ...out!, content: { ...out!.content, to: 'Somebody else' } }, item, seal: '', lastWeight: null }]).ok).toBe(false);
  });
});
