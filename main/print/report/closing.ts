import { capitalise } from '../../../app/report/count-words.ts';
import { facts, factsHeight, WIDE_LABEL_SHARE } from '../blocks/facts.ts';
import { heading } from '../blocks/heading.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { firstRowHeight, photographs } from '../blocks/photographs.ts';
import { signatureLines } from '../blocks/signature-lines.ts';
import { cell, table } from '../blocks/table.ts';
import { TEXT } from '../paper.ts';
import type { Sheet } from '../sheet.ts';
import { remember, type ReportContext } from './context.ts';

export function drawInstruments(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Instruments' });
  heading(sheet, section, 'Methods and instruments');
  remember(context, 'instruments');
  if (model.instruments.length === 0) {
    paragraph(sheet, section, 'No instrument was used.', { style: TEXT.lead });
    return;
  }
  table(sheet, section, [{ head: 'Instrument', share: 26 }, { head: 'Methods', share: 26 }, { head: 'Settings', share: 26, style: TEXT.lead }, { head: 'State on the day', share: 22 }],
    model.instruments.map((entry) => [cell(entry.name), cell(entry.methods), cell(entry.settings), cell(entry.state)]));
}

export function drawLimits(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Scope and limits' });
  heading(sheet, section, 'Scope and limits');
  remember(context, 'limits');
  paragraph(sheet, section, model.scope.trim() === '' ? 'The laboratory has not written down the scope of its screening.' : model.scope, { style: TEXT.lead, after: 4 });
  for (const limit of model.limits.filter((text) => text.trim() !== '')) paragraph(sheet, section, limit, { style: TEXT.lead, after: 4 });
}

export function drawSignatures(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Signatures' });
  heading(sheet, section, 'Signatures', { keepWith: 84 });
  remember(context, 'signatures');
  if (model.signatures.length === 0) {
    paragraph(sheet, section, 'Nobody has signed this report.', { style: TEXT.warn });
    return;
  }
  signatureLines(sheet, section, model.signatures.map((entry) => ({ name: entry.name, detail: [capitalise(entry.role), entry.on].filter((t) => t.trim() !== '').join(', ') })));
}

const AFTER_FACTS = 8;
const ITEM_HEADING = { style: TEXT.strong, before: 8, after: 2 } as const;

/** The least of an item that follows its heading on the same page, points. */
const LEAST_OF_ITEM = 50;
/** Most height between the section's heading and the first item's facts: the note of two lines, the item's heading of two. */
const ABOVE_FIRST_ITEM = 2 * TEXT.small.pitch + 4 + ITEM_HEADING.before + 2 * TEXT.strong.pitch + ITEM_HEADING.after;

/** Height that follows an item's heading on the same page: its facts and the first row of its photographs, unless no page could hold them. */
function keptWithItem(sheet: Sheet, item: ReportContext['model']['items'][number]): number {
  if (item.photographs.length === 0) return LEAST_OF_ITEM;
  const height = factsHeight(sheet, item.facts, sheet.width, WIDE_LABEL_SHARE) + AFTER_FACTS + firstRowHeight(sheet, item.photographs);
  return height + 2 * ABOVE_FIRST_ITEM > sheet.bodyHeight ? LEAST_OF_ITEM : height;
}

export function drawItems(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Items received' });
  const [first] = model.items;
  const mark = heading(sheet, section, 'Items received', { keepWith: ABOVE_FIRST_ITEM + (first ? keptWithItem(sheet, first) : 0) });
  remember(context, 'items');
  if (model.items.length === 0) {
    paragraph(sheet, section, 'No item is described.', { style: TEXT.lead });
    return;
  }
  paragraph(sheet, section, 'What is called declared was stated by the client and was not verified, unless a finding says so.', { style: TEXT.small, after: 4 });
  for (const item of model.items) {
    heading(sheet, section, `Item ${item.label}, ${item.kind}`, { level: 3, ...ITEM_HEADING, keepWith: keptWithItem(sheet, item), ...(mark ? { under: mark } : {}) });
    facts(sheet, section, item.facts, sheet.left, sheet.width, WIDE_LABEL_SHARE);
    sheet.y += AFTER_FACTS;
    photographs(sheet, section, item.photographs);
  }
}

export function drawCustody(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Custody log' });
  heading(sheet, section, 'Custody log');
  remember(context, 'custody');
  if (model.custody.length === 0) {
    paragraph(sheet, section, 'The custody ledger has no entry for these items.', { style: TEXT.warn });
    return;
  }
  paragraph(sheet, section, `Times in ${model.laboratory.zone}. Each entry carries the digest of the one before; the first digits of its own stand at the right.`, { style: TEXT.small, after: 4 });
  table(sheet, section, [
    { head: 'When', share: 22, style: TEXT.monoSmall, rowHead: true },
    { head: 'Item', share: 7, style: TEXT.monoSmall },
    { head: 'What', share: 34, style: TEXT.smallInk },
    { head: 'Who', share: 20, style: TEXT.smallInk },
    { head: 'Weight', share: 13, style: TEXT.monoSmall, align: 'right' },
    { head: 'Digest', share: 12, style: TEXT.monoSmall },
  ], model.custody.map((entry) => [cell(entry.at), cell(entry.item), cell(entry.what), cell(entry.who), cell(entry.weight), cell(entry.hash.slice(0, 10))]), { padding: 2.4 });
}

export function drawRawRecords(context: ReportContext): void {
  const { model, sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Raw records' });
  heading(sheet, section, 'Raw records');
  remember(context, 'raw records');
  if (model.rawRecords.length === 0) {
    paragraph(sheet, section, 'No instrument file belongs to this report.', { style: TEXT.lead });
    return;
  }
  paragraph(sheet, section, 'The files as the instruments wrote them, kept byte for byte, each with its SHA-256.', { style: TEXT.small, after: 4 });
  table(sheet, section, [
    { head: 'Run', share: 6, style: TEXT.monoSmall, rowHead: true },
    { head: 'File', share: 23, style: TEXT.smallInk },
    { head: 'Size', share: 10, style: TEXT.monoSmall, align: 'right' },
    // Wide enough for all 64 digits on one line, so that they can be copied in one piece.
    { head: 'SHA-256', share: 61, style: TEXT.digest },
  ], model.rawRecords.map((entry) => [cell(entry.run), cell(entry.name), cell(entry.size), cell(entry.sha256)]), { padding: 2.4 });
}

/** The end mark, and what a reader must know of the print itself. */
export function drawEnd({ model, sheet, digest }: ReportContext, name: string): void {
  const section = sheet.child(sheet.root, 'Sect', { title: 'End of report' });
  const notice = sheet.fonts.notice();
  sheet.ensure(70);
  sheet.y += 14;
  if (notice) paragraph(sheet, section, notice, { style: TEXT.warnSmall, after: 6 });
  sheet.rule(sheet.y, 'line', 0.6);
  sheet.y += 6;
  paragraph(sheet, section, model.draft ? 'End of draft.' : `End of report ${name}.`, { style: TEXT.strong });
  paragraph(sheet, section, 'SHA-256 of what this report says (canonical JSON, RFC 8785):', { style: TEXT.small });
  paragraph(sheet, section, digest, { style: TEXT.digest });
}
