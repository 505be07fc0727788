import type { HandOverModel } from '../../app/report/hand-over-model.ts';
import { factColumns, type Fact } from './blocks/facts.ts';
import { heading } from './blocks/heading.ts';
import { letterhead } from './blocks/letterhead.ts';
import { drawPageFrames, RUNNING_HEAD } from './blocks/page-frame.ts';
import { paragraph } from './blocks/paragraph.ts';
import { signatureLines } from './blocks/signature-lines.ts';
import { cell, table } from './blocks/table.ts';
import { contentDigest, shortDigest } from './content-digest.ts';
import { TEXT } from './paper.ts';
import { Sheet } from './sheet.ts';

const fact = (label: string, value: string): Fact => ({ label, value, mono: false });

function drawParties(sheet: Sheet, model: HandOverModel): void {
  factColumns(sheet, sheet.root, [
    [{ heading: 'Between', facts: [fact('Given by', model.from), fact('Taken by', model.to)] }],
    [{ heading: 'Agreed', facts: [
      fact('When', `${model.at} (${model.laboratory.zone})`),
      ...(model.purpose === '' ? [] : [fact('For', model.purpose)]),
      ...(model.dueBack === '' ? [] : [fact('Expected back', model.dueBack)]),
    ] }],
  ]);
}

function drawItems(sheet: Sheet, model: HandOverModel): void {
  const section = sheet.child(sheet.root, 'Sect', { title: 'Items' });
  heading(sheet, section, model.items.length === 1 ? 'One item' : `${model.items.length} items`, { keepWith: 60 });
  table(sheet, section, [
    { head: 'Item', share: 18, style: TEXT.mono, rowHead: true },
    { head: 'Declared as', share: 36 },
    { head: 'Seal', share: 13, style: TEXT.mono },
    { head: 'Weight', share: 15, style: TEXT.mono, align: 'right' },
    { head: 'Declared value', share: 16, style: TEXT.mono, align: 'right' },
    { head: 'Ledger', share: 16, style: TEXT.monoSmall },
  ], model.items.map((item) => [
    cell(item.number),
    { parts: [{ text: item.declared }, { text: item.remark, style: TEXT.small }] },
    item.seal === '' ? cell('none', TEXT.lead) : cell(item.seal),
    item.weight === '' ? cell('not weighed', TEXT.lead) : cell(item.weight, item.differs ? TEXT.warn : undefined),
    item.declaredValue.trim() === '' ? cell('not stated', TEXT.lead) : cell(item.declaredValue),
    cell(`${item.entry} · ${item.hash.slice(0, 8)}`),
  ]));
}

function drawConditions(sheet: Sheet, model: HandOverModel): void {
  const section = sheet.child(sheet.root, 'Sect', { title: 'Conditions' });
  heading(sheet, section, 'Conditions');
  for (const condition of model.conditions) paragraph(sheet, section, condition, { style: TEXT.lead, after: 2 });
  heading(sheet, section, 'Signatures', { before: 12, after: 0, keepWith: 72, bookmark: null });
  signatureLines(sheet, section, [{ name: model.from, detail: 'gives' }, { name: model.to, detail: 'takes' }]);
  const notice = sheet.fonts.notice();
  if (notice) paragraph(sheet, section, notice, { style: TEXT.warnSmall });
}

/** The form that giver and taker sign, as a PDF. The same model gives the same bytes. */
export async function renderHandOver(model: HandOverModel): Promise<Uint8Array<ArrayBuffer>> {
  const digest = contentDigest(model);
  const sheet = new Sheet({
    digest, pageSize: model.pageSize, language: model.language, createdAt: new Date(model.madeAt), runningHead: RUNNING_HEAD,
    title: model.title, author: model.laboratory.name, subject: `${model.title} from ${model.from} to ${model.to}`,
  });
  letterhead(sheet, sheet.root, model.laboratory);
  heading(sheet, sheet.root, model.title, { level: 1, style: TEXT.title, before: 18, after: 4, keepWith: 0 });
  sheet.rule(sheet.y, 'ink', 0.9);
  drawParties(sheet, model);
  drawItems(sheet, model);
  drawConditions(sheet, model);
  drawPageFrames(sheet, {
    laboratory: model.laboratory.name, name: model.title, warnings: model.demonstration ? ['Invented demonstration data'] : [],
    foot: () => 'Two copies: one for each hand.', digest: `digest ${shortDigest(digest)}`,
  });
  return sheet.finish();
}
