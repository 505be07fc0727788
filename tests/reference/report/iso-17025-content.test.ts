// ISO/IEC 17025:2017, 7.8.2 to 7.8.8: what a report of test results holds, clause by clause, read from the printed pages by pdf.js, which
// knows nothing of the writer. The wording of the clauses is this project's own.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DraftContent } from '../../../app/report/draft/draft-content.ts';
import { emissionInstrument } from '../../../app/spectra/simulate/instrument.ts';
import { simulateRaman } from '../../../app/spectra/simulate/raman.ts';
import { simulatedStone } from '../../../app/spectra/simulate/stone.ts';
import { jcampOf, openHouse, type House } from '../../unit/main/services/work-house.ts';
import { readPdf, type ReadPdf } from '../../unit/main/print/read-pdf.ts';

let house: House;
let caseId: string;
let stones: Record<string, string>;
let first: ReadPdf;
let amended: ReadPdf;
let number: string;

const one = (text: string): string => text.replace(/\s+/g, ' ');
const whole = (pdf: ReadPdf): string => one(pdf.pages.join(' '));

async function draft(input: { caseId: string; kind: 'single-stone'; subjectId: string } | { amends: string }): Promise<{ draftId: string; content: DraftContent }> {
  const { draftId } = await house.done(house.colleague, 'reportDrafts.create', input);
  return { draftId, content: (await house.done(house.colleague, 'reportDrafts.open', { draftId })).content };
}

async function issue(draftId: string): Promise<{ id: string; number: string; pdf: ReadPdf }> {
  const row = await house.done(house.colleague, 'reportDrafts.issue', { draftId });
  return { id: row.id, number: row.number, pdf: await readPdf((await house.done(house.colleague, 'reports.pdf', { reportId: row.id })).pdf) };
}

/** Clauses that stand open for a draft with this content. */
async function open(draftId: string, content: DraftContent): Promise<string[]> {
  return (await house.done(house.colleague, 'reportDrafts.look', { draftId, content })).clauses.filter(({ state }) => state === 'missing').map(({ clause }) => clause);
}

beforeAll(async () => {
  house = await openHouse();
  ({ caseId, stones } = await house.takeIn());
  const stoneId = stones['A-1']!;
  house.pass(60 * 24);
  const curve = simulateRaman(simulatedStone('natural-ia', 1), { ...emissionInstrument({ laserNm: 532, points: 1800, spikes: 0 }), fromCm1: 200, toCm1: 2000 }, 1);
  await house.done(house.examiner, 'runs.record', {
    stoneId, method: 'raman', instrumentId: null, laserNm: 532, temperatureK: 295, integrationMs: 500, resolution: null, cautions: ['laser'],
    files: [{ name: 'stone.jdx', bytes: jcampOf('stone', curve, 'RAMAN SHIFT') }], observation: null, note: '',
  });
  await house.done(house.examiner, 'findings.add', { stoneId, method: 'microscopy', statement: 'A crystal under the table.', strength: 'neutral', supports: 'none', caution: '' });
  const folder = await house.done(house.examiner, 'stones.folder', { stoneId });
  for (const finding of folder.findings.filter(({ state }) => state === 'proposed')) await house.done(house.examiner, 'findings.decide', { findingId: finding.id, accept: true, reason: '' });
  house.pass(10);
  const { id } = await house.done(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'undetermined', reasons: 'The findings do not suffice.', departure: '' });
  house.pass(10);
  await house.done(house.colleague, 'conclusions.confirm', { conclusionId: id, agrees: true, reason: '' });
  house.pass(60 * 24);
  const issued = await issue((await draft({ caseId, kind: 'single-stone', subjectId: stoneId })).draftId);
  ({ number, pdf: first } = issued);
  const again = await draft({ amends: issued.id });
  await house.done(house.colleague, 'reportDrafts.save', { draftId: again.draftId, content: { ...again.content, remarks: 'The inscription was read again.', reason: 'A remark was forgotten.' } });
  amended = (await issue(again.draftId)).pdf;
}, 120_000);
afterAll(() => house.close());

describe('7.8.2.1, what every report holds', () => {
  test.each([
    ['a, a title', /Diamond screening report/],
    ['b, name and address of the laboratory', /Invented Laboratory.*2 Nowhere Lane/],
    ['c, where the tests were made', /Tests were made/],
    ['d, a clear end', /End of report S-2026-0001, revision 1\./],
    ['e, name and contact of the client', /Invented Client.*1 Nowhere Lane/],
    ['f, the methods', /Methods.*raman.*Microscopy|Methods.*microscopy.*raman/i],
    ['g, what was tested, told so that it can’t be confused', /Stone A-1.*round brilliant/i],
    ['h, the day of receipt', /Received 25 Nov 2026/],
    ['i, the day of testing', /Tested 26 Nov 2026/],
    ['j, the day of issue', /Issued 27 Nov 2026/],
    ['l, results relate only to the items tested', /Results relate only to the (one )?stone/i],
    ['m, results with their units', /1332\.\d cm(⁻¹|−1)/],
    ['n, departures from the method', /Departures/i],
    ['o, who authorises the report', /Signatures.*Ben Invented/],
    ['p, what comes from outside', /From others/],
  ] as const)('%s', (_clause, text) => { expect(whole(first)).toMatch(text); });

  test('d, one number and the page of pages on every page', () => {
    first.pages.forEach((page, index) => { expect(one(page)).toContain(`${number}, revision 1`); expect(one(page)).toContain(`page ${index + 1} of ${first.pages.length}`); });
  });
  test('not to be reproduced except in full (note to 7.8.2.1), on every page', () => {
    for (const page of first.pages) expect(one(page)).toContain('This report shall not be reproduced except in full.');
  });
});

test.each([
  ['7.8.2.2, what the client states is marked as the client’s', /as stated by the client|stated by the client|client’s (own )?(statement|words)/i],
  ['7.8.2.2, results apply to the item as received, where the laboratory did not sample', /as received/],
  ['7.8.3.1 a, conditions of the tests', /Conditions/],
  ['7.8.3.1 c, uncertainty beside the number, in its unit', /\d ± \d\.\d+ (nm|cm⁻¹|ct)/],
  ['7.8.6, the rule by which is decided', /decision|decided/i],
  ['7.8.7, opinions marked as such', /Opinion of the examiners, stone A-1/],
  ['7.8.7, opinions with their basis', /Opinion of the examiners.*What the findings were taken to say.*F3.*F3 Microscopy A crystal under the table/],
  ['7.8.7, by whom', /Concluded by Ada Invented.*confirmed by Ben Invented/],
] as const)('%s', (_clause, text) => { expect(whole(first)).toMatch(text); });

test('7.8.8, a revision names what it replaces, what it changes and why, and every page says that it is the revision', () => {
  expect(whole(amended)).toMatch(new RegExp(`(replaces|Amendment to) (report )?(no\\. )?${number}`, 'i'));
  expect(whole(amended)).toContain('A remark was forgotten.');
  expect(whole(amended)).toContain('The section “Remarks” was added.');
  for (const page of amended.pages) expect(one(page)).toContain(`${number}, revision 2`);
});

describe('what is left out is missed by its clause, and the report is not issued', () => {
  test.each([
    ['conduct', ['7.8.2.1 c', '7.8.2.1 n', '7.8.2.1 p', '7.8.3.1 a']],
    ['particulars', ['7.8.2.1 e', '7.8.2.1 h', '7.8.2.1 i', '7.8.2.1 j']],
    ['methods', ['7.8.2.1 f', '7.8.3.1 c', '7.8.6']],
    ['items', ['7.8.2.2']],
    ['limits', ['7.8.2.1 l']],
    ['results', ['7.8.2.1 m']],
    ['opinions', ['7.8.7']],
    ['signatures', ['7.8.2.1 o']],
  ] as const)('the section %s', async (section, clauses) => {
    const { draftId, content } = await draft({ caseId, kind: 'single-stone', subjectId: stones['A-1']! });
    const without = { ...content, sections: content.sections.map((entry) => (entry.id === section ? { ...entry, on: false } : entry)) };
    const missed = await open(draftId, without);
    for (const clause of clauses) expect(missed).toContain(clause);
    await house.done(house.colleague, 'reportDrafts.save', { draftId, content: without });
    const answer = await house.as(house.colleague, 'reportDrafts.issue', { draftId });
    expect(answer.ok ? null : answer.error.code).toBe('refused');
    await house.done(house.colleague, 'reportDrafts.discard', { draftId });
  });

  test('a stone without a conclusion has no opinion to sign for', async () => {
    const { draftId, content } = await draft({ caseId, kind: 'single-stone', subjectId: stones['B-1']! });
    expect(await open(draftId, content)).toEqual(expect.arrayContaining(['7.8.2.1 f', '7.8.2.1 i', '7.8.7']));
  });

  test('a clause that may not apply needs its reason', async () => {
    const { draftId, content } = await draft({ caseId, kind: 'single-stone', subjectId: stones['A-1']! });
    const without = { ...content, sections: content.sections.map((entry) => (entry.id === 'methods' ? { ...entry, on: false } : entry)) };
    expect(await open(draftId, { ...without, notApplicable: { conformity: '   ' } })).toContain('7.8.6');
    expect(await open(draftId, { ...without, notApplicable: { conformity: 'No statement of conformity is made.' } })).not.toContain('7.8.6');
  });
});
