import { SIGNED_REMARK } from '../../app/signature/signature-file.ts';
import { sectionOf, type ReportModel } from '../../app/report/report-model.ts';
import type { ReportSection } from '../../app/report/sections/index.ts';
import { drawPageFrames, RUNNING_HEAD } from './blocks/page-frame.ts';
import { contentDigest, shortDigest, textDigest } from './content-digest.ts';
import type { ReportContext } from './report/context.ts';
import { attachmentsOf, type Enclosure } from './report/enclosure.ts';
import { drawEnd } from './report/end.ts';
import { drawOpening } from './report/opening.ts';
import { DRAWINGS } from './report/sections/index.ts';
import { fillPageNumbers } from './report/sections/overview.ts';
import { Sheet } from './sheet.ts';

/** ISO/IEC 17025:2017, note to 7.8.2, asks for such a sentence. */
const WHOLE_ONLY = 'This report shall not be reproduced except in full.';

const nameOf = (model: ReportModel): string => {
  const number = model.number.trim() === '' ? 'no number yet' : model.number;
  return model.revision > 0 ? `${number}, revision ${model.revision}` : number;
};

function drawBody(context: ReportContext): void {
  drawOpening(context);
  for (const part of context.model.sections) (DRAWINGS[part.section] as (context: ReportContext, part: ReportSection) => void)(context, part);
}

function footOf({ model, pages }: ReportContext, page: number): string {
  if (page > 0) return WHOLE_ONLY;
  const limits = pages.get('limits');
  const custody = pages.get('custody');
  const hasCustody = (sectionOf(model, 'custody')?.entries.length ?? 0) > 0;
  return [WHOLE_ONLY, limits === undefined ? '' : `Limits: page ${limits + 1}.`, custody === undefined || !hasCustody ? '' : `Custody log: page ${custody + 1}.`].filter((text) => text !== '').join(' ');
}

/**
 * The screening report as a PDF/A-3b, with what is enclosed attached. The same model and enclosure give the same bytes: nothing is taken from the clock or from chance.
 * Letters that the faces lack are printed as "[?]" and named at the end of the report.
 * Throws only for a model that `reportModel` would refuse, whose issuedAt is no instant, or that holds half of a surrogate pair (RFC 8785 knows no digest for it).
 */
export async function renderReport(model: ReportModel, enclosure: Enclosure | null = null): Promise<Uint8Array<ArrayBuffer>> {
  const digest = enclosure === null ? contentDigest(model) : textDigest(enclosure.document);
  const issuedAt = new Date(model.issuedAt);
  const name = nameOf(model);
  const sheet = new Sheet({
    pageSize: model.pageSize, language: model.language, createdAt: issuedAt, runningHead: RUNNING_HEAD, digest,
    ...(enclosure?.signed ? { remark: SIGNED_REMARK } : {}),
    title: model.draft ? `${model.title}, draft` : `${model.title} ${name}`, author: model.laboratory.name, subject: `Case ${model.caseNumber}, ${model.client.name}`,
  });
  const context: ReportContext = { model, sheet, digest, enclosed: enclosure !== null, signed: enclosure?.signed === true, pages: new Map(), promises: [] };
  drawBody(context);
  drawEnd(context, name);
  fillPageNumbers(context);
  drawPageFrames(sheet, {
    laboratory: model.laboratory.name, name, digest: `digest ${shortDigest(digest)}`,
    warnings: [...(model.draft ? ['draft, not issued'] : []), ...(model.demonstration ? ['Invented demonstration data'] : [])],
    foot: (page) => footOf(context, page),
  });
  return sheet.finish(enclosure === null ? [] : attachmentsOf(enclosure, issuedAt));
}
