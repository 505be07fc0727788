import type { LotsPart } from '../../../../app/report/sections/lots.ts';
import { facts, WIDE_LABEL_SHARE } from '../../blocks/facts.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { cell, table } from '../../blocks/table.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

type Lot = LotsPart['lots'][number];
/** Air after a table or a list of facts. */
const AIR = 6;

type Element = ReturnType<ReportContext['sheet']['child']>;

function drawOutcomes({ sheet }: ReportContext, section: Element, lot: Lot): void {
  table(sheet, section, [
    { head: 'Outcome of the tested stones', share: 38, rowHead: true }, { head: 'Stones', share: 12, style: TEXT.mono, align: 'right' }, { head: 'Numbers', share: 50, style: TEXT.monoSmall },
  ], lot.outcomes.map((row) => [cell(row.words), cell(String(row.count)), cell(lot.named.find((one) => one.words === row.words)?.numbers ?? '')]));
  sheet.y += AIR;
}

function drawAmounts({ sheet }: ReportContext, section: Element, head: string, rows: readonly { name: string; count: string; weight: string }[]): void {
  if (rows.length === 0) return;
  table(sheet, section, [
    { head, share: 56, rowHead: true }, { head: 'Stones', share: 16, style: TEXT.mono, align: 'right' }, { head: 'Weight', share: 28, style: TEXT.mono, align: 'right' },
  ], rows.map((row) => [cell(row.name), cell(row.count), cell(row.weight)]));
  // Twice as much, or the head of the next table reads as one more row.
  sheet.y += 2 * AIR;
}

function drawLot(context: ReportContext, parent: Element, lot: Lot): void {
  const { sheet } = context;
  const section = sheet.child(parent, 'Sect', { title: `Lot ${lot.label}` });
  heading(sheet, section, `Lot ${lot.label}: ${lot.heading}`, { level: 3, style: TEXT.strong, before: 8, after: 2 });
  facts(sheet, section, lot.facts, sheet.left, sheet.width, WIDE_LABEL_SHARE);
  sheet.y += AIR;
  for (const sentence of lot.sampling) paragraph(sheet, section, sentence, { after: 2 });
  sheet.y += AIR;
  drawOutcomes(context, section, lot);
  for (const sentence of lot.statement) paragraph(sheet, section, sentence, { after: 2 });
  for (const remark of lot.remarks) paragraph(sheet, section, remark, { style: TEXT.warn, after: 2 });
  sheet.y += AIR;
  drawAmounts(context, section, 'Size by sieve', lot.sizes.map(({ size, ...rest }) => ({ name: size, ...rest })));
  drawAmounts(context, section, 'Part after splitting', lot.parts.map(({ part, ...rest }) => ({ name: part, ...rest })));
  for (const sentence of lot.balance) paragraph(sheet, section, sentence, { style: TEXT.small, after: 2 });
}

/** Every lot: how it was sampled, what was found, what follows and what does not. */
export function drawLots(context: ReportContext, part: LotsPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Lots of small stones' });
  heading(sheet, section, 'Lots of small stones');
  remember(context, 'lots');
  for (const lot of part.lots) drawLot(context, section, lot);
}
