import type { CustodyPagesModel } from '../../app/report/custody-pages-model.ts';
import { facts, WIDE_LABEL_SHARE, type Fact } from './blocks/facts.ts';
import { heading } from './blocks/heading.ts';
import { letterhead } from './blocks/letterhead.ts';
import { drawPageFrames, RUNNING_HEAD } from './blocks/page-frame.ts';
import { paragraph } from './blocks/paragraph.ts';
import { drawQrCode } from './blocks/qr-code.ts';
import { cell, table } from './blocks/table.ts';
import { contentDigest, shortDigest } from './content-digest.ts';
import { TEXT } from './paper.ts';
import { Sheet } from './sheet.ts';

const QR_SIDE = 70;

const fact = (label: string, value: string, mono = false): Fact => ({ label, value, mono });

function drawOpening(sheet: Sheet, model: CustodyPagesModel): void {
  letterhead(sheet, sheet.root, model.laboratory);
  const top = sheet.y + 14;
  sheet.within(sheet.child(sheet.root, 'Figure', { alt: `QR code that reads ${model.subject}` }), 'Figure',
    () => drawQrCode(sheet, model.subject, sheet.right - QR_SIDE + 8, top - 4, QR_SIDE));
  heading(sheet, sheet.root, 'Chain of custody', { level: 1, style: TEXT.title, before: 18, after: 1, keepWith: 0 });
  paragraph(sheet, sheet.root, `${model.subject === model.caseNumber ? 'Case' : 'Item'} ${model.subject}: every hand it passed through, as written in the custody ledger.`,
    { style: TEXT.lead, width: sheet.width - QR_SIDE - 12 });
  sheet.y = Math.max(sheet.y, top + QR_SIDE - 8);
  sheet.rule(sheet.y, 'ink', 0.9);
  facts(sheet, sheet.root, [
    fact('Client', model.client), fact('Received', `${model.received} (${model.laboratory.zone})`), fact('Printed', `${model.printed}, by ${model.printedBy}`),
  ], sheet.left, sheet.width, WIDE_LABEL_SHARE);
  sheet.y += 8;
  paragraph(sheet, sheet.root, model.check.sentence, { style: model.check.holds ? TEXT.lead : TEXT.warn, after: 4 });
}

function drawItem(sheet: Sheet, item: CustodyPagesModel['items'][number]): void {
  const section = sheet.child(sheet.root, 'Sect', { title: `Item ${item.number}` });
  heading(sheet, section, `Item ${item.number}`, { keepWith: 90 });
  paragraph(sheet, section, `${item.declared} (${item.kind}). ${item.now}`, { style: TEXT.lead, after: 3 });
  for (const doubt of item.doubts) paragraph(sheet, section, doubt, { style: TEXT.warn, after: 3 });
  table(sheet, section, [
    { head: 'Entry', share: 7, style: TEXT.mono, align: 'right' },
    { head: 'When', share: 24, style: TEXT.mono },
    { head: 'What', share: 38, rowHead: true },
    { head: 'Weight', share: 12, style: TEXT.mono },
    { head: 'Written by', share: 17, style: TEXT.lead },
    { head: 'Digest', share: 12, style: TEXT.monoSmall },
  ], item.entries.map((entry) => [
    cell(String(entry.seq)), cell(entry.at), cell(entry.what, entry.holds ? undefined : TEXT.warn),
    cell(entry.weight, entry.differs ? TEXT.warn : undefined), cell(entry.who), cell(entry.hash.slice(0, SHOWN_DIGITS)),
  ]));
}

/** Digits of a digest that stand in the table; all of them stand in the list at the end. */
const SHOWN_DIGITS = 10;

function drawDigests(sheet: Sheet, model: CustodyPagesModel): void {
  const entries = model.items.flatMap((item) => item.entries).sort((a, b) => a.seq - b.seq);
  if (entries.length === 0) return;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Digests of the entries' });
  heading(sheet, section, 'Digests of the entries', { keepWith: 60 });
  paragraph(sheet, section, 'Compare them with the custody.json of the case bundle or with the ledger itself: an entry that was altered has another digest, and so has every one after it.', { style: TEXT.lead, after: 4 });
  table(sheet, section, [{ head: 'Entry', share: 8, style: TEXT.mono, align: 'right' }, { head: 'SHA-256', share: 92, style: TEXT.digest, rowHead: true }],
    entries.map((entry) => [cell(String(entry.seq)), cell(entry.hash)]), { padding: 2 });
}

/** The chain of custody of a case or an item, as a PDF. The same model gives the same bytes. */
export async function renderCustody(model: CustodyPagesModel): Promise<Uint8Array<ArrayBuffer>> {
  const digest = contentDigest(model);
  const sheet = new Sheet({
    digest, pageSize: model.pageSize, language: model.language, createdAt: new Date(model.printedAt), runningHead: RUNNING_HEAD,
    title: `Chain of custody ${model.subject}`, author: model.laboratory.name, subject: `Custody entries of ${model.subject}`,
  });
  drawOpening(sheet, model);
  for (const item of model.items) drawItem(sheet, item);
  drawDigests(sheet, model);
  const notice = sheet.fonts.notice();
  if (notice) paragraph(sheet, sheet.root, notice, { style: TEXT.warnSmall });
  drawPageFrames(sheet, {
    laboratory: model.laboratory.name, name: `Chain of custody ${model.subject}`, warnings: model.demonstration ? ['Invented demonstration data'] : [],
    foot: () => 'Printed from the custody ledger; the ledger itself is the record.', digest: `digest ${shortDigest(digest)}`,
  });
  return sheet.finish();
}
