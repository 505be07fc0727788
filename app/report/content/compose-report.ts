import { reportModel, type ReportModel } from '../report-model.ts';
import { custodyParts } from './custody-part.ts';
import { instrumentParts } from './instrument-part.ts';
import { itemParts } from './item-part.ts';
import { localDate, localSpan } from './local-time.ts';
import { rawRecordParts } from './raw-record-part.ts';
import type { ReportSource } from './report-source.ts';
import { stonePart } from './stone-part.ts';

export const REPORT_TITLE = 'Diamond screening report';

/** Who stands behind the report, each once in each part: examiners, second persons, and who issues it. */
function signaturesOf(source: ReportSource): ReportModel['signatures'] {
  const { zone } = source.laboratory;
  const signed = new Map<string, { role: string; name: string; at: string }>();
  const sign = (role: string, name: string, at: string): void => {
    const before = signed.get(`${role}\n${name}`);
    if (before === undefined || before.at < at) signed.set(`${role}\n${name}`, { role, name, at });
  };
  const newest = source.stones.flatMap((entry) => entry.conclusions.slice(-1));
  for (const conclusion of newest) sign('examiner', conclusion.by, conclusion.at);
  for (const { confirmation } of newest) if (confirmation?.agrees === true) sign('second person', confirmation.by, confirmation.at);
  if (source.issue !== null) sign('issuing person', source.issue.by, source.at);
  return [...signed.values()].map(({ role, name, at }) => ({ role, name, on: localDate(at, zone) }));
}

const paragraphs = (text: string): string[] => text.split(/\n+/).map((line) => line.trim()).filter((line) => line !== '');

/** What the report of a case says, from the records as they stand. The same records give the same report. */
export function composeReport(source: ReportSource): ReportModel {
  const { laboratory, issue, at } = source;
  const { zone, settings } = laboratory;
  const { case: ofCase } = source;
  return reportModel.parse({
    schema: 'culet-report-1', language: 'en', demonstration: laboratory.isDemonstration, draft: issue === null,
    number: issue?.number ?? '', revision: issue?.revision ?? 0, title: REPORT_TITLE, pageSize: settings.pageSize,
    laboratory: {
      name: laboratory.name, address: laboratory.address, zone,
      logo: laboratory.logo === null || source.logoBase64 === null ? null : { mediaType: laboratory.logo.mediaType, base64: source.logoBase64 },
    },
    client: { name: ofCase.client.name, address: ofCase.client.address },
    caseNumber: ofCase.number,
    received: localDate(ofCase.receivedAt, zone),
    tested: localSpan(source.stones.flatMap((entry) => entry.runs.map((run) => run.at)), zone),
    issued: issue === null ? '' : localDate(at, zone),
    issuedAt: at,
    asks: ofCase.asks,
    items: itemParts(source),
    stones: source.stones.map((entry) => stonePart(source, entry)),
    instruments: instrumentParts(source),
    scope: settings.scopeText, limits: paragraphs(settings.limitsText),
    signatures: signaturesOf(source),
    custody: custodyParts(source),
    rawRecords: rawRecordParts(source),
  } satisfies ReportModel);
}
