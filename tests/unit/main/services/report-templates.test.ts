import { afterEach, beforeEach, expect, test } from 'vitest';
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

const desk = () => house.done(house.examiner, 'reportTemplates.desk', {});
const offered = async () => (await house.done(house.examiner, 'reportTemplates.list', {})).map((one) => one.templateId);
const begin = async (templateId: string) => (await house.done(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: stones['A-1']!, templateId })).draftId;
const ofStone = async () => (await desk()).supplied.find((one) => one.content.kind === 'single-stone')!.content;

test('a draft stays with the version it began with; a new one begins with the newest, its remarks and its title', async () => {
  const mine = { ...await ofStone(), name: 'Short', title: 'Short report', remarks: 'Examined unmounted.' };
  const { templateId } = await house.done(house.examiner, 'reportTemplates.save', { templateId: null, content: mine });
  const draftId = await begin(templateId);
  await house.done(house.examiner, 'reportTemplates.save', { templateId, content: { ...mine, title: 'Shorter report', remarks: '' } });
  const open = async (id: string) => (await house.done(house.colleague, 'reportDrafts.open', { draftId: id })).content;
  expect(await open(draftId)).toMatchObject({ templateVersion: 1, title: 'Short report', remarks: 'Examined unmounted.' });
  expect(await open(await begin(templateId))).toMatchObject({ templateVersion: 2, title: 'Shorter report', remarks: '' });
  const { templates, versions } = await desk();
  expect(templates.find((one) => one.templateId === templateId)).toMatchObject({ version: 2, drafts: 2, supplied: false });
  expect(versions.map((one) => [one.version, one.content.title])).toEqual([[2, 'Shorter report'], [1, 'Short report']]);
}, 60_000);

test('a withdrawn template is offered no more, its drafts go on, and it can be offered again', async () => {
  const content = { ...await ofStone(), name: 'Short' };
  const { templateId } = await house.done(house.examiner, 'reportTemplates.save', { templateId: null, content });
  const draftId = await begin(templateId);
  await house.done(house.examiner, 'reportTemplates.save', { templateId, content: { ...content, withdrawn: true } });
  expect(await offered()).not.toContain(templateId);
  const again = await house.as(house.colleague, 'reportDrafts.create', { caseId, kind: 'single-stone', subjectId: stones['A-1']!, templateId });
  expect(again.ok ? null : again.error.code).toBe('conflict');
  const draft = await house.done(house.colleague, 'reportDrafts.open', { draftId });
  expect((await house.done(house.colleague, 'reportDrafts.look', { draftId, content: draft.content })).pdf.byteLength).toBeGreaterThan(1000);
  await house.done(house.examiner, 'reportTemplates.save', { templateId, content });
  expect(await offered()).toContain(templateId);
}, 60_000);

test('what can’t be kept is refused in words', async () => {
  const content = await ofStone();
  const refusal = async (templateId: string | null, part: Partial<typeof content>) => {
    const reply = await house.as(house.examiner, 'reportTemplates.save', { templateId, content: { ...content, ...part } });
    return reply.ok ? 'kept' : reply.error.message;
  };
  expect(await refusal('single-stone', { withdrawn: true })).toContain('always offered');
  expect(await refusal('single-stone', { kind: 'case' })).toContain('keeps the kind');
  expect(await refusal(null, { name: ` ${content.name.toUpperCase()} ` })).toContain('There is a template');
  expect(await refusal(null, { name: 'Empty', sections: content.sections.map((entry) => ({ ...entry, on: false })) })).toContain('without a section');
  expect(await refusal(null, { name: 'Strange', sections: [{ id: 'piece-map', on: true }] })).toContain('does not suit');
});

test('the pages of a template that is not kept yet are drawn with the newest case’s records, and nothing is written', async () => {
  const content = { ...await ofStone(), title: 'As it might be', remarks: 'Words of the template.' };
  const looked = await house.done(house.examiner, 'reportTemplates.look', { content });
  expect(looked.of).toMatch(/^A-1 of case /);
  const text = (await readPdf(looked.pdf!)).pages.join(' ');
  expect(text).toContain('Words of the template.');
  expect(text).toContain('As it might be');
  expect((await desk()).versions).toEqual([]);
  const lot = (await desk()).supplied.find((one) => one.content.kind === 'lot')!.content;
  expect(await house.done(house.examiner, 'reportTemplates.look', { content: lot })).toEqual({ of: null, pdf: null });
}, 60_000);
