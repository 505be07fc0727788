import type { ReportModel } from '../../app/report/report-model.ts';
import { factColumns } from './blocks/facts.ts';
import { drawPageFrames, RUNNING_HEAD } from './blocks/page-frame.ts';
import { contentDigest, shortDigest } from './content-digest.ts';
import { drawCustody, drawEnd, drawInstruments, drawItems, drawLimits, drawRawRecords, drawSignatures } from './report/closing.ts';
import type { ReportContext } from './report/context.ts';
import { drawOpening } from './report/opening.ts';
import { drawOverview, fillPageNumbers } from './report/overview.ts';
import { drawStone } from './report/stone-block.ts';
import { clientFacts, workFacts } from './report/work-facts.ts';
import { Sheet } from './sheet.ts';

/** ISO/IEC 17025:2017, note to 7.8.2, asks for such a sentence. */
const WHOLE_ONLY = 'This report shall not be reproduced except in full.';

const nameOf = (model: ReportModel): string => {
  const number = model.number.trim() === '' ? 'no number yet' : model.number;
  return model.revision > 0 ? `${number}, revision ${model.revision}` : number;
};

/** Client and work side by side: a report on many stones has no stone to put beside the work. */
function drawWorkOfMany({ model, sheet }: ReportContext): void {
  factColumns(sheet, sheet.root, [[{ heading: 'The client', facts: clientFacts(model) }], [{ heading: 'The work', facts: workFacts(model) }]]);
}

function drawBody(context: ReportContext): void {
  const { model } = context;
  drawOpening(context);
  if (model.stones.length === 1) drawStone(context, 0);
  else {
    if (model.stones.length > 1) drawOverview(context);
    drawWorkOfMany(context);
    model.stones.forEach((_, index) => drawStone(context, index));
  }
  drawInstruments(context);
  drawLimits(context);
  drawSignatures(context);
  drawItems(context);
  drawCustody(context);
  drawRawRecords(context);
}

function footOf({ model, pages }: ReportContext, page: number): string {
  if (page > 0) return WHOLE_ONLY;
  const limits = (pages.get('limits') ?? 0) + 1;
  const custody = (pages.get('custody') ?? 0) + 1;
  return `${WHOLE_ONLY} Limits: page ${limits}. ${model.custody.length > 0 ? `Custody log: page ${custody}.` : ''}`.trim();
}

/**
 * The screening report as a PDF. The same model gives the same bytes: nothing is taken from the clock or from chance.
 * Letters that the faces lack are printed as "[?]" and named at the end of the report.
 * Throws only for a model that `reportModel` would refuse, whose issuedAt is no instant, or that holds half of a surrogate pair (RFC 8785 knows no digest for it).
 */
export async function renderReport(model: ReportModel): Promise<Uint8Array<ArrayBuffer>> {
  const digest = contentDigest(model);
  const name = nameOf(model);
  const sheet = new Sheet({
    pageSize: model.pageSize, language: model.language, createdAt: new Date(model.issuedAt), runningHead: RUNNING_HEAD,
    title: model.draft ? `${model.title}, draft` : `${model.title} ${name}`, author: model.laboratory.name, subject: `Case ${model.caseNumber}, ${model.client.name}`,
  });
  const context: ReportContext = { model, sheet, digest, pages: new Map(), promises: [] };
  drawBody(context);
  drawEnd(context, name);
  fillPageNumbers(context);
  drawPageFrames(sheet, {
    laboratory: model.laboratory.name, name, digest: `digest ${shortDigest(digest)}`,
    warnings: [...(model.draft ? ['draft, not issued'] : []), ...(model.demonstration ? ['Invented demonstration data'] : [])],
    foot: (page) => footOf(context, page),
  });
  return sheet.finish();
}
