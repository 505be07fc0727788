import { mayBeWithheld, withholdCase, withholdItem, withholdStone } from '../../app/conclusions/withhold.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { chooseAttached, type ChosenRecord } from '../../app/report-document/choose-attached.ts';
import { reportCompleteness, type ClauseState, type Signers } from '../../app/report/completeness/report-completeness.ts';
import { composeReport, type ReportPlan } from '../../app/report/content/compose-report.ts';
import { narrowSource } from '../../app/report/content/narrow-source.ts';
import { photographsOf, type ReportSource } from '../../app/report/content/report-source.ts';
import type { DraftContent } from '../../app/report/draft/draft-content.ts';
import type { ReportModel } from '../../app/report/report-model.ts';
import { readStoredReport } from '../../app/report/stored/read-stored-report.ts';
import type { ReportTemplate } from '../../app/report/templates/template.ts';
import { ok, type Result } from '../../app/result.ts';
import { caseRecords, rawRecordsOfCase, type CaseRecords } from '../../db/store/case-records.ts';
import { createPhotographsStore } from '../../db/store/photographs.ts';
import { withheldAmong } from '../../db/store/second-readings.ts';
import { notFound } from './failures.ts';
import { runImageTask } from './image-work.ts';
import { lotsAndWeights } from './lots-and-weights.ts';
import { figuresByStone } from './report-figures.ts';
import { reportMaps } from './report-maps.ts';
import { signersFor } from './report-signers.ts';
import type { Work } from './work-context.ts';

export type BuiltReport = {
  readonly model: ReportModel; readonly clauses: ClauseState[];
  /** What it was written from, and which raw records go with it. */
  readonly source: ReportSource; readonly records: readonly ChosenRecord[];
};

/** What is to be written, and for whom it is looked at. */
export type ReportOrder = {
  readonly caseId: string; readonly content: DraftContent;
  readonly issue: ReportSource['issue'];
  /** The person who is about to issue; null where nobody is. */
  readonly issuer: string | null;
  /** A template that is not kept yet: the content's own is left aside. */
  readonly template?: ReportTemplate;
};

export const missingOf = (clauses: readonly ClauseState[]): string[] => [...new Set(clauses.flatMap((clause) => clause.missing))];

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64');

/** Longer side of a copy that stands for a picture which paper can't take as it is. */
const COPY_SIDE = 1700;

/** A picture's bytes as paper takes them: TIFF as a JPEG copy, all others as they are; null where it can't be read. */
async function drawable(mediaType: string, { bytes, name }: { readonly bytes: Uint8Array; readonly name: string }, work: Work): Promise<Uint8Array | null> {
  if (mediaType !== 'image/tiff') return bytes;
  const made = await runImageTask(work, 'photograph-preview', { bytes, longSide: COPY_SIDE }, name, (result) => result);
  return made.ok ? made.value.jpeg : null;
}

/** The bytes of the pictures to print, in base64; null: of all. */
async function pictures(source: Pick<ReportSource, 'case'>, chosen: readonly string[] | null, work: Work): Promise<Result<Map<string, string>, Failure>> {
  const store = createPhotographsStore(work.casebook.handle, () => { throw new Error('reading pictures makes no records'); });
  const found = new Map<string, string>();
  for (const photograph of photographsOf(source)) {
    if (chosen !== null && !chosen.includes(photograph.id)) continue;
    const content = await store.content(photograph.id);
    if (!content.ok) return content;
    const drawn = await drawable(photograph.mediaType, content.value, work);
    if (drawn !== null) found.set(photograph.id, base64(drawn));
  }
  return ok(found);
}


/** What the subject of a report is called: a stone or an item by its label, a case by its number. */
export function subjectLabel(records: Pick<ReportSource, 'case'>, subject: DraftContent['subject']): string {
  const items = records.case.parcels.flatMap((parcel) => parcel.items);
  const item = items.find((one) => one.id === subject.id);
  return item?.label ?? items.flatMap((one) => one.stones).find((stone) => stone.id === subject.id)?.label ?? records.case.number;
}

/** The records as the person at the window may see them: a draft is no way around what they are to state first. */
function asSeen(records: CaseRecords, { casebook, call }: Work): CaseRecords {
  const withheld = withheldAmong(casebook.handle.read, call.session.personId, mayBeWithheld(records.stones.map(({ stone }) => stone)));
  if (withheld.size === 0) return records;
  return {
    ...records, case: withholdCase(records.case, withheld),
    stones: records.stones.map((entry) => (withheld.has(entry.stone.id)
      ? { ...entry, stone: withholdStone(entry.stone, withheld), item: withholdItem(entry.item, withheld), conclusions: [], withheld: true }
      : { ...entry, item: withholdItem(entry.item, withheld) })),
  };
}

async function amendsOf({ amends, reason }: DraftContent, { stores }: Work): Promise<Result<ReportPlan['amends'], Failure>> {
  if (amends === null) return ok(null);
  const stored = await stores.reports.content(amends);
  return stored === null ? notFound('The report that is to be amended') : ok({ before: readStoredReport(stored.model), reason });
}

/** The template in the version that the draft began with: what is kept of it since changes no draft. */
const templateOf = ({ templateId, templateVersion }: DraftContent, { stores }: Work): Promise<ReportTemplate | null> => stores.reportHouse.template(templateId, templateVersion);

/**
 * What a report says as the records stand, and how it stands with the standard.
 * `issue` null makes a draft. The same records, content, instant and issue give the same model.
 */
export async function buildReportModel({ caseId, content, issue, issuer, template: unkept }: ReportOrder, work: Work): Promise<Result<BuiltReport, Failure>> {
  const ofCase = await caseRecords(work.casebook.handle, caseId, work.at);
  if (ofCase === null) return notFound('This case');
  const records = asSeen(narrowSource(ofCase, content.subject), work);
  const template = unkept ?? await templateOf(content, work);
  const figures = await figuresByStone(records.stones, { chosen: content.figures, perStone: template?.content.figuresPerStone ?? null }, work);
  if (!figures.ok) return figures;
  const images = await pictures(records, content.photographs, work);
  if (!images.ok) return images;
  const amends = await amendsOf(content, work);
  if (!amends.ok) return amends;
  const reported = new Set([...records.stones.flatMap((entry) => entry.runs.flatMap((run) => run.files.map((file) => file.sha256))), ...photographsOf(records).map((photograph) => photograph.sha256)]);
  const raw = rawRecordsOfCase(work.casebook.handle.read, caseId);
  const chosen = chooseAttached(content.subject.id === null ? raw : raw.filter((record) => reported.has(record.sha256)), records.laboratory.settings.attachMegabytes);
  const source: ReportSource = {
    ...records, at: work.at, issue, pictures: images.value, texts: await work.stores.reportHouse.texts(), writing: content,
    attached: new Set(chosen.flatMap(({ listed }) => (listed.attachedAs === null ? [] : [listed.sha256]))),
    ...await lotsAndWeights(records.case, work), maps: await reportMaps(records, work),
    logoBase64: records.laboratory.logo === null || template?.content.logo === false ? null : base64(records.laboratory.logo.bytes),
    stones: records.stones.map((entry) => ({ ...entry, figures: figures.value.get(entry.stone.id) ?? [] })),
  };
  const model = composeReport(source, {
    subject: { kind: content.subject.kind, label: subjectLabel(records, content.subject), stones: records.stones.length },
    template: template === null ? null : { id: template.templateId, name: template.content.name, version: content.templateVersion },
    title: content.title, pageSize: content.pageSize, sections: content.sections.filter((entry) => entry.on).map((entry) => entry.id), amends: amends.value,
  });
  const signers: Signers = await signersFor(content.subject.kind, issuer, records.laboratory.zone, work);
  return ok({ model, clauses: reportCompleteness({ source, model, signers, amends: content.amends !== null }), source, records: chosen });
}
