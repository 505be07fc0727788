import type { ReceiptModel } from '../../app/report/receipt-model.ts';
import { factColumns, type Fact } from './blocks/facts.ts';
import { heading } from './blocks/heading.ts';
import { letterhead } from './blocks/letterhead.ts';
import { drawPageFrames, RUNNING_HEAD } from './blocks/page-frame.ts';
import { paragraph } from './blocks/paragraph.ts';
import { drawQrCode } from './blocks/qr-code.ts';
import { signatureLines } from './blocks/signature-lines.ts';
import { cell, table } from './blocks/table.ts';
import { contentDigest, shortDigest } from './content-digest.ts';
import { TEXT } from './paper.ts';
import { Sheet } from './sheet.ts';

const QR_SIDE = 78;

const fact = (label: string, value: string, mono = false): Fact => ({ label, value, mono });

function drawOpening(sheet: Sheet, model: ReceiptModel): void {
  letterhead(sheet, sheet.root, model.laboratory);
  const top = sheet.y + 14;
  sheet.within(sheet.child(sheet.root, 'Figure', { alt: `QR code that reads ${model.caseNumber}` }), 'Figure',
    () => drawQrCode(sheet, model.caseNumber, sheet.right - QR_SIDE + 8, top - 4, QR_SIDE));
  heading(sheet, sheet.root, 'Receipt', { level: 1, style: TEXT.title, before: 18, after: 1, keepWith: 0 });
  paragraph(sheet, sheet.root, `Case ${model.caseNumber}, received ${model.received} (${model.laboratory.zone}) from ${model.client.name}.`,
    { style: TEXT.lead, width: sheet.width - QR_SIDE - 12 });
  sheet.y = Math.max(sheet.y, top + QR_SIDE - 8);
  sheet.rule(sheet.y, 'ink', 0.9);
}

function drawParties(sheet: Sheet, model: ReceiptModel): void {
  const { client } = model;
  const reach = [client.email, client.phone].filter((text) => text.trim() !== '').join('\n');
  factColumns(sheet, sheet.root, [
    [{ heading: 'The client', facts: [fact('Name', client.name), fact('Address', client.address), fact('Reached at', reach)] }],
    [{ heading: 'The order', facts: [fact('Client asks', model.asks), fact('Due', model.due === '' ? 'no date agreed' : model.due, model.due !== ''), fact('Received by', model.receivedBy)] }],
  ]);
  if (model.remarks.trim() !== '') {
    heading(sheet, sheet.root, 'Remarks', { bookmark: null });
    paragraph(sheet, sheet.root, model.remarks, { style: TEXT.lead });
  }
}

function drawParcels(sheet: Sheet, model: ReceiptModel): void {
  for (const parcel of model.parcels) {
    const section = sheet.child(sheet.root, 'Sect', { title: parcel.heading });
    heading(sheet, section, parcel.seal.trim() === '' ? `${parcel.heading}, not sealed` : `${parcel.heading}, seal ${parcel.seal}`, { keepWith: 60 });
    if (parcel.remarks.trim() !== '') paragraph(sheet, section, parcel.remarks, { style: TEXT.lead, after: 4 });
    table(sheet, section, [
      { head: 'Item', share: 18, style: TEXT.mono, rowHead: true },
      { head: 'Declared as', share: 40 },
      { head: 'Stones', share: 12, style: TEXT.lead },
      { head: 'Gross weight', share: 15, style: TEXT.mono, align: 'right' },
      { head: 'Declared value', share: 15, style: TEXT.mono, align: 'right' },
    ], parcel.items.map((item) => [
      cell(item.number),
      { parts: [{ text: item.declared }, { text: item.condition.trim() === '' ? item.kind : `${item.kind}; condition: ${item.condition}`, style: TEXT.small }] },
      cell(item.count),
      item.weight === '' ? cell('not weighed', TEXT.lead) : cell(item.weight),
      item.declaredValue.trim() === '' ? cell('not stated', TEXT.lead) : cell(item.declaredValue),
    ]));
  }
}

function drawConditions(sheet: Sheet, model: ReceiptModel): void {
  const section = sheet.child(sheet.root, 'Sect', { title: 'Conditions' });
  heading(sheet, section, 'Conditions');
  for (const condition of model.conditions) paragraph(sheet, section, condition, { style: TEXT.lead, after: 2 });
  heading(sheet, section, 'Signatures', { before: 12, after: 0, keepWith: 72, bookmark: null });
  signatureLines(sheet, section, [
    { name: model.receivedBy, detail: `for ${model.laboratory.name}` },
    { name: model.client.name, detail: 'client, or who brought the items' },
  ]);
  const notice = sheet.fonts.notice();
  if (notice) paragraph(sheet, section, notice, { style: TEXT.warnSmall });
}

/** The receipt that a client takes home, as a PDF. The same model gives the same bytes. */
export async function renderReceipt(model: ReceiptModel): Promise<Uint8Array<ArrayBuffer>> {
  const digest = contentDigest(model);
  const sheet = new Sheet({
    pageSize: model.pageSize, language: model.language, createdAt: new Date(model.receivedAt), runningHead: RUNNING_HEAD, digest,
    title: `Receipt for case ${model.caseNumber}`, author: model.laboratory.name, subject: `Items received from ${model.client.name}`,
  });
  drawOpening(sheet, model);
  drawParties(sheet, model);
  drawParcels(sheet, model);
  drawConditions(sheet, model);
  drawPageFrames(sheet, {
    laboratory: model.laboratory.name, name: `Receipt ${model.caseNumber}`, warnings: model.demonstration ? ['Invented demonstration data'] : [],
    foot: () => 'Please bring this receipt when you collect your items.', digest: `digest ${shortDigest(digest)}`,
  });
  return sheet.finish();
}
