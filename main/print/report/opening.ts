import { dayInZone, isZone } from '../../../app/custody/calendar.ts';
import { reportCodeText } from '../../../app/report-document/report-code.ts';
import { countWords, listWords } from '../../../app/report/count-words.ts';
import { sectionOf } from '../../../app/report/report-model.ts';
import { drawQrCode, qrMatrix, QUIET_ZONE } from '../blocks/qr-code.ts';
import { heading } from '../blocks/heading.ts';
import { letterhead } from '../blocks/letterhead.ts';
import { paragraph } from '../blocks/paragraph.ts';
import { TEXT } from '../paper.ts';
import type { Sheet } from '../sheet.ts';
import type { ReportContext } from './context.ts';

/** The code's square with its light border, points: modules of half a millimetre, which a telephone reads from paper. */
const CODE = { side: 76, above: 6 } as const;

/** The code that says number, day of issue and digest, under the page's number; returns where it ends. */
function drawCode(sheet: Sheet, model: ReportContext['model'], digest: string): number {
  const { zone } = model.laboratory;
  // A stored report may name a zone that this machine does not know: the day is then that of UTC.
  const issuedOn = dayInZone(model.issuedAt, isZone(zone) ? zone : 'UTC');
  const text = reportCodeText({ number: model.number, revision: model.revision, issuedOn, digest });
  const unit = CODE.side / (qrMatrix(text).size + 2 * QUIET_ZONE);
  const top = sheet.y + CODE.above;
  // The light border reaches over the edge of the text, so that the dark squares stand on it.
  sheet.within(sheet.child(sheet.root, 'Figure', { alt: `QR code that reads: ${text}` }), 'Figure', () => drawQrCode(sheet, text, sheet.right - CODE.side + QUIET_ZONE * unit, top - QUIET_ZONE * unit, CODE.side));
  return top + CODE.side - 2 * QUIET_ZONE * unit + 8;
}

const the = (count: number, one: string): string => (count === 1 ? `the ${one}` : `the ${countWords(count, one)}`);

/** What the results relate to. A lot has results of its own, whether or not any stone of it has a folder. */
function relatesTo(model: ReportContext['model']): string {
  const lots = sectionOf(model, 'lots')?.lots.length ?? 0;
  const { stones } = model.subject;
  if (stones + lots === 0) return 'No stone has been tested.';
  const what = [...(lots === 0 ? [] : [the(lots, 'lot')]), ...(stones === 0 ? [] : [the(stones, 'stone')])];
  return `Results relate only to ${listWords(what)} described here, as received.`;
}

/** The upper part of page 1: who reports, what it is, for whom. The last sentence is asked for by ISO/IEC 17025:2017, 7.8.2.1 l and 7.8.2.2. */
export function drawOpening({ model, sheet, digest }: ReportContext): void {
  letterhead(sheet, sheet.root, model.laboratory);
  const codeBottom = model.draft ? 0 : drawCode(sheet, model, digest);
  const width = codeBottom === 0 ? sheet.width : sheet.width - CODE.side;
  heading(sheet, sheet.root, model.title, { level: 1, style: TEXT.title, before: 18, after: 1, keepWith: 0, bookmark: null, width });
  const issued = model.draft ? `Draft for ${model.client.name}, not issued.` : `Issued ${model.issued} for ${model.client.name}.`;
  paragraph(sheet, sheet.root, `${issued} ${relatesTo(model)}`, { style: TEXT.lead, width, after: 9 });
  sheet.y = Math.max(sheet.y, codeBottom);
  sheet.rule(sheet.y, 'ink', 0.9);
  sheet.y += 9;
}
