import { afterEach, beforeEach, expect, test } from 'vitest';
import type { DraftContent } from '../../../../app/report/draft/draft-content.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import { readStoredReport } from '../../../../app/report/stored/read-stored-report.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { readPdf } from '../print/read-pdf.ts';
import { openHouse, type House } from './work-house.ts';

let house: House;
let caseId: string;
let stones: Record<string, string>;

beforeEach(async () => {
  house = await openHouse();
  ({ caseId, stones } = await house.takeIn());
});
afterEach(() => house.close());

async function confirmed(stoneId: string): Promise<void> {
  await house.done(house.examiner, 'findings.add', { stoneId, method: 'microscopy', statement: 'A crystal under the table.', strength: 'neutral', supports: 'none', caution: '' });
  house.pass(1);
  const { id } = await house.done(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'undetermined', reasons: 'The findings do not suffice.', departure: '' });
  house.pass(1);
  await house.done(house.colleague, 'conclusions.confirm', { conclusionId: id, agrees: true, reason: '' });
  house.pass(1);
}

const begin = async (): Promise<string> => (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: stones['A-1']! })).draftId;
const open = (draftId: string) => house.done(house.colleague, 'reportDrafts.open', { draftId });
async function save(draftId: string, change: Partial<DraftContent>): Promise<DraftContent> {
  const content = { ...(await open(draftId)).content, ...change };
  await house.done(house.colleague, 'reportDrafts.save', { draftId, content });
  return content;
}
const missing = async (draftId: string): Promise<string[]> => (await house.done(house.colleague, 'reportDrafts.look', { draftId, content: (await open(draftId)).content })).clauses.flatMap((clause) => clause.missing);

test('a report on one stone is written from it alone, refused until nothing is open, then numbered, and its draft is gone', async () => {
  const draftId = await begin();
  expect((await missing(draftId)).join(' ')).toContain('A-1 has no conclusion yet');
  const early = await house.as(house.colleague, 'reportDrafts.issue', { draftId });
  expect(early.ok ? null : early.error.code).toBe('refused');
  await confirmed(stones['A-1']!);
  const content = await save(draftId, { remarks: 'Seen with the client.' });
  expect(await missing(draftId)).toEqual([]);
  await save(draftId, { sections: content.sections.map((entry) => (entry.id === 'signatures' ? { ...entry, on: false } : entry)) });
  expect((await missing(draftId)).join(' ')).toContain('“Signatures” is left out');
  await save(draftId, { sections: content.sections });
  const row = await house.done(house.colleague, 'reportDrafts.issue', { draftId });
  expect(row).toMatchObject({ number: 'S-2026-0001', revision: 1, kind: 'single-stone', subject: 'A-1', stones: 1, state: 'issued' });
  expect(await house.done(house.colleague, 'reportDrafts.list', { caseId })).toEqual([]);
  const text = (await readPdf((await house.done(house.colleague, 'reports.pdf', { reportId: row.id })).pdf)).pages.join(' ');
  expect(text).toContain('Seen with the client.');
  expect(text).not.toContain('a brooch');
  expect((await house.casebook.ledgers.verify({ at: house.now() }))?.parts.filter((part) => !part.sound)).toEqual([]);
}, 60_000);

test('a revision says what differs and why; the one before is superseded; a withdrawn report prints the same and is named by verify', async () => {
  await confirmed(stones['A-1']!);
  const first = await house.done(house.colleague, 'reportDrafts.issue', { draftId: await begin() });
  const printed = (await house.done(house.colleague, 'reports.pdf', { reportId: first.id })).pdf;
  const { draftId } = await house.done(house.colleague, 'reportDrafts.create', { amends: first.id });
  expect((await missing(draftId)).join(' ')).toMatch(/why the report is amended.*nothing to amend/i);
  await save(draftId, { remarks: 'The inscription was read again.', reason: 'A remark was forgotten.' });
  const second = await house.done(house.colleague, 'reportDrafts.issue', { draftId });
  expect(second).toMatchObject({ number: first.number, revision: 2, state: 'issued', reason: 'A remark was forgotten.' });
  const stored = await house.casebook.handle.read.get<{ model: string }>('SELECT model FROM report WHERE revision = 2');
  expect(sectionOf(readStoredReport(stored!.model), 'amendment')).toMatchObject({ replaces: { number: first.number, revision: 1 }, changes: ['The section “Remarks” was added.'] });
  const again = await house.as(house.colleague, 'reportDrafts.create', { amends: first.id });
  expect(again.ok ? null : again.error.code).toBe('conflict');
  const withdrawn = await house.done(house.colleague, 'reports.withdraw', { reportId: second.id, reason: 'The wrong stone lay in the paper.' });
  expect(withdrawn).toMatchObject({ state: 'withdrawn', withdrawn: { by: 'Ben Invented', reason: 'The wrong stone lay in the paper.' } });
  expect((await house.done(house.colleague, 'reports.list', { caseId })).map((row) => row.state)).toEqual(['withdrawn', 'superseded']);
  expect(Buffer.compare(Buffer.from((await house.done(house.colleague, 'reports.pdf', { reportId: first.id })).pdf), Buffer.from(printed))).toBe(0);
  const verified = await house.casebook.ledgers.verify({ at: house.now() });
  expect(verified?.parts.filter((part) => !part.sound)).toEqual([]);
  expect(verified?.parts.find((part) => part.part === 'issued reports')?.note).toContain('S-2026-0001 revision 2');
}, 60_000);

test('a case leaves the bench when reports that count cover all of it, and comes back when one is withdrawn', async () => {
  const state = async () => (await house.casebook.cases.get(caseId))?.state;
  const sound = async () => (await house.casebook.ledgers.verify({ at: house.now() }))?.parts.filter((part) => !part.sound);
  await confirmed(stones['A-1']!);
  const one = await house.done(house.colleague, 'reportDrafts.issue', { draftId: await begin() });
  expect(await state()).toBe('open');
  for (const [label, id] of Object.entries(stones)) if (label !== 'A-1') await confirmed(id);
  const whole = await house.done(house.colleague, 'reportDrafts.issue', { draftId: (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'case', subjectId: null })).draftId });
  expect(await state()).toBe('reported');
  await house.done(house.colleague, 'reports.withdraw', { reportId: whole.id, reason: 'A page was missing.' });
  expect(await state()).toBe('open');
  for (const [label, id] of Object.entries(stones)) {
    if (label !== 'A-1') await house.done(house.colleague, 'reportDrafts.issue', { draftId: (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: id })).draftId });
  }
  expect(await state()).toBe('reported');
  await house.done(house.colleague, 'reports.withdraw', { reportId: one.id, reason: 'The wrong stone lay in the paper.' });
  expect(await state()).toBe('open');
  expect(await sound()).toEqual([]);
}, 60_000);

test('two stones of a case have reports and numbers of their own', async () => {
  await confirmed(stones['A-1']!);
  await confirmed(stones['B-1']!);
  const of = async (label: string) => house.done(house.colleague, 'reportDrafts.issue', { draftId: (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: stones[label]! })).draftId });
  expect([(await of('A-1')).number, (await of('B-1')).number]).toEqual(['S-2026-0001', 'S-2026-0002']);
}, 60_000);

test('once an authorisation is written, only those it names may issue; a new text is printed and named', async () => {
  await confirmed(stones['A-1']!);
  const draftId = await begin();
  await house.done(house.colleague, 'authorisations.write', { holderId: house.colleague, kinds: ['case'], since: '2026-01-01', note: '' });
  const refused = await house.as(house.colleague, 'reportDrafts.issue', { draftId });
  expect(refused.ok ? '' : refused.error.message).toContain('not authorised');
  await house.done(house.colleague, 'authorisations.write', { holderId: house.colleague, kinds: ['case', 'single-stone'], since: '2026-01-01', note: '' });
  expect(await house.done(house.colleague, 'houseTexts.write', { kind: 'disclaimer', text: 'Not to be used in advertising.', note: 'asked for by counsel' })).toMatchObject({ version: 1 });
  await house.done(house.colleague, 'reportDrafts.issue', { draftId });
  const model = readStoredReport(house.casebook.handle.read.get<{ model: string }>('SELECT model FROM report')!.model);
  expect(sectionOf(model, 'limits')?.disclaimer).toEqual(['Not to be used in advertising.']);
  expect(model.texts.find((text) => text.kind === 'disclaimer')?.version).toBe(1);
}, 60_000);

test('words that should not stand there are pointed out with their source, but not inside the client’s name', async () => {
  const draftId = await begin();
  const content = await save(draftId, { remarks: 'Genuine. Shown to Invented Client.' });
  const { words } = await house.done(house.colleague, 'reportDrafts.look', { draftId, content });
  expect(words.map((remark) => [remark.field, remark.word])).toEqual([['remarks', 'Genuine']]);
  expect(words[0]!.source).toContain('ISO 18323');
}, 60_000);

test('words that should not stand are answered for with a reason, which is kept in the audit ledger; otherwise nothing is issued', async () => {
  await confirmed(stones['A-1']!);
  const draftId = await begin();
  await save(draftId, { remarks: 'A genuine stone, certified by us.' });
  const issue = (standing?: { words: string[]; reason: string }) => house.as(house.colleague, 'reportDrafts.issue', { draftId, ...(standing && { standing }) });
  const unanswered = await issue();
  expect(unanswered).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringMatching(/“genuine” \(remarks; ISO 18323:2015.*“certified”/) as string } });
  const half = await issue({ words: ['genuine'], reason: 'The client’s own words.' });
  expect(half).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('“certified”') as string } });
  expect(half.ok || half.error.message).not.toContain('genuine');
  const row = await house.done(house.colleague, 'reportDrafts.issue', { draftId, standing: { words: ['genuine', 'certified'], reason: 'The client’s own words, quoted.' } });
  const { content } = house.casebook.handle.read.get<{ content: string }>(`SELECT content FROM audit_entry WHERE operation = 'reportDrafts.issue' AND subject = ?`, [row.number])!;
  expect(JSON.parse(content)).toMatchObject({ number: row.number, standing: { reason: 'The client’s own words, quoted.', words: [{ field: 'remarks', word: 'genuine' }, { field: 'remarks', word: 'certified' }] } });
  expect((await house.casebook.ledgers.verify({ at: house.now() }))?.parts.filter((part) => !part.sound)).toEqual([]);
}, 60_000);

test('where no such word stands, none is kept', async () => {
  await confirmed(stones['A-1']!);
  const row = await house.done(house.colleague, 'reportDrafts.issue', { draftId: await begin() });
  const { content } = house.casebook.handle.read.get<{ content: string }>(`SELECT content FROM audit_entry WHERE operation = 'reportDrafts.issue' AND subject = ?`, [row.number])!;
  expect(JSON.parse(content)).not.toHaveProperty('standing');
}, 60_000);

/** A house in which something happens once, right after the pages of a report were drawn. */
async function housePausedAfterDrawing(): Promise<{ house: House; afterDrawing(work: () => Promise<unknown>): void }> {
  const inner = createInlinePool();
  let once: (() => Promise<unknown>) | null = null;
  const run: typeof inner.run = async (name, payload, options) => {
    const drawn = await inner.run(name, payload, options);
    const work = name === 'render-report' ? once : null;
    if (work !== null) once = null;
    await work?.();
    return drawn;
  };
  return { house: await openHouse({ pool: { ...inner, run } }), afterDrawing(work) { once = work; } };
}

const revisions = (): unknown[] => house.casebook.handle.read.all('SELECT number, revision FROM report ORDER BY rowid');

test('a draft that names a report on something else is never issued as a revision of it', async () => {
  for (const label of ['A-1', 'B-1']) await confirmed(stones[label]!);
  const first = await house.done(house.colleague, 'reportDrafts.issue', { draftId: await begin() });
  const other = (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: stones['B-1']! })).draftId;
  await save(other, { amends: first.id, reason: 'Meant for another stone.' });
  expect(await house.as(house.colleague, 'reportDrafts.issue', { draftId: other })).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('on A-1 of case') as string } });
  const elsewhere = await house.takeIn();
  await confirmed(elsewhere.stones['A-1']!);
  const foreign = (await house.done(house.colleague, 'reportDrafts.create', { caseId: elsewhere.caseId, kind: 'single-stone', subjectId: elsewhere.stones['A-1']! })).draftId;
  await save(foreign, { amends: first.id, reason: 'Meant for another case.' });
  expect(await house.as(house.colleague, 'reportDrafts.issue', { draftId: foreign })).toMatchObject({ ok: false, error: { code: 'refused' } });
  expect(revisions()).toEqual([{ number: first.number, revision: 1 }]);
}, 60_000);

test('a report that is withdrawn or amended while its revision is drawn is not amended a second time', async () => {
  house.close();
  const paused = await housePausedAfterDrawing();
  house = paused.house;
  ({ caseId, stones } = await house.takeIn());
  await confirmed(stones['A-1']!);
  const first = await house.done(house.colleague, 'reportDrafts.issue', { draftId: await begin() });
  const amend = async (id: string, remarks: string): Promise<string> => {
    const { draftId } = await house.done(house.colleague, 'reportDrafts.create', { amends: id });
    await save(draftId, { remarks, reason: 'A remark was forgotten.' });
    return draftId;
  };
  const [slow, quick] = [await amend(first.id, 'One remark.'), await amend(first.id, 'Another remark.')];
  paused.afterDrawing(() => house.done(house.colleague, 'reportDrafts.issue', { draftId: quick }));
  expect(await house.as(house.colleague, 'reportDrafts.issue', { draftId: slow })).toMatchObject({ ok: false, error: { code: 'conflict' } });
  const [second] = await house.done(house.colleague, 'reports.list', { caseId });
  expect(second).toMatchObject({ revision: 2, state: 'issued' });
  const third = await amend(second!.id, 'A third remark.');
  paused.afterDrawing(() => house.done(house.examiner, 'reports.withdraw', { reportId: second!.id, reason: 'The wrong stone lay in the paper.' }));
  expect(await house.as(house.colleague, 'reportDrafts.issue', { draftId: third })).toMatchObject({ ok: false, error: { code: 'conflict' } });
  expect(revisions()).toEqual([{ number: first.number, revision: 1 }, { number: first.number, revision: 2 }]);
}, 60_000);
