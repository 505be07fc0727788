import type { ItemView } from '../contract/cases.ts';
import type { FindingView, RunView } from '../contract/work.ts';
import { CONCLUSION_WORDS } from '../domain/conclusion.ts';
import type { HouseSettings } from '../domain/house-settings.ts';
import { resolutionUnitOf } from '../domain/resolution-unit.ts';
import { aimSentence, drawnSentence } from '../lots/statement-words.ts';
import { clientContact } from '../report/content/case-particulars.ts';
import { DIMENSIONS_COVER, dimensionUncertainty } from '../report/content/dimensions-text.ts';
import type { SourceLot } from '../report/content/lot-part.ts';
import type { ReportSource, SourceStone } from '../report/content/report-source.ts';
import { reportedConclusion } from '../report/content/stone-opinion.ts';
import type { BalanceUncertainty } from '../report/content/weight-text.ts';
import { sectionOf, type ReportModel } from '../report/report-model.ts';
import { sectionById, type ReportSection } from '../report/sections/index.ts';
import { linesOf, measurementsOf } from './measurements-of.ts';
import { decimalText, quantityOf, weighed, type Quantity } from './quantity.ts';
import { DOCUMENT_SCHEMA, reportDocument, type ReportDocument } from './report-document.ts';

type Stone = ReportDocument['stones'][number];

export type DocumentParts = {
  readonly source: Omit<ReportSource, 'pictures' | 'logoBase64'>;
  /** What the pages say, and its SHA-256. */
  readonly model: ReportModel;
  readonly modelDigest: string;
  readonly records: ReportDocument['records'];
};

const condition = (value: number | null, unit: string): Quantity | null => (value === null ? null : quantityOf(value, unit));

function runOf(run: RunView): Stone['runs'][number] {
  return {
    number: run.number, method: run.method, at: run.at, by: run.by, instrument: run.instrument, instrumentState: run.instrumentState,
    conditions: {
      laser: condition(run.laserNm, 'nm'), temperature: condition(run.temperatureK, 'K'), integration: condition(run.integrationMs, 'ms'),
      resolution: condition(run.resolution, resolutionUnitOf(run.method)),
    },
    observation: run.observation, note: run.note,
    files: run.files.map(({ name, sha256, size, outcome, reader }) => ({ name, sha256, bytes: size, reading: outcome, reader })),
    analyses: run.spectra.flatMap(({ analysis, title, fileName, yUnit }) => (analysis === null ? [] : [{
      curve: title, file: fileName, at: analysis.at, pipeline: analysis.result.pipeline, tables: analysis.result.tables,
      parameters: analysis.result.parameters, lines: linesOf(analysis.result, yUnit), warnings: analysis.result.warnings,
    }])),
  };
}

const findingOf = ({ run, method, code, statement, strength, supports, counts, caution, source }: FindingView): Stone['findings'][number] =>
  ({ run, method, code, statement, strength, supports, counts, caution: caution ?? '', source: source ?? '' });

/** The opinion as the pages print it. What an examiner concluded and the second person did not share stands apart, so that no program takes it for the report's. */
function opinionOf(source: DocumentParts['source'], entry: SourceStone): Stone['opinion'] {
  const newest = entry.conclusions.at(-1);
  const printed = reportedConclusion(source, entry);
  if (newest === undefined || printed === null) return null;
  const { conclusion, reasons, departure, rules, by, at, confirmation } = newest;
  return {
    conclusion: printed.id, words: printed.words, reasons: printed.reasons, departure: printed.departure, rules, by, at,
    disputed: confirmation?.agrees === false ? { conclusion, words: CONCLUSION_WORDS[conclusion], reasons, departure } : null,
    confirmation: confirmation === null ? null : { by: confirmation.by, at: confirmation.at, agrees: confirmation.agrees, reason: confirmation.reason },
  };
}

function uncertaintyOfDimensions({ stone }: SourceStone, settings: HouseSettings): Stone['dimensionsUncertainty'] {
  const uncertainty = dimensionUncertainty(stone, settings);
  return uncertainty === null || stone.measurements.trim() === '' ? null : { value: decimalText(uncertainty), unit: 'mm', covers: DIMENSIONS_COVER };
}

function stoneOf(source: DocumentParts['source'], entry: SourceStone): Stone {
  const { stone, item, runs, findings } = entry;
  return {
    label: stone.label, item: item.label, mounted: stone.mounted, position: stone.position, shape: stone.shape, colourClass: stone.colourClass,
    dimensions: stone.measurements, dimensionsUncertainty: uncertaintyOfDimensions(entry, source.laboratory.settings), measurements: measurementsOf(entry, source.weights ?? [], source.laboratory.settings), runs: runs.map(runOf),
    findings: findings.filter((finding) => finding.state === 'accepted').map(findingOf),
    setAside: findings.filter((finding) => finding.state === 'set-aside').map(({ run, statement, reason }) => ({ run, statement, reason })),
    opinion: opinionOf(source, entry),
  };
}

const saysOf = (part: ReportSection): ReportDocument['printed']['says'] => {
  const { title, lines } = sectionById(part.section);
  return lines(part).map(({ key, text }) => ({ section: title, about: key, text }));
};

const lotOf = ({ lot, results }: SourceLot, settings: HouseSettings): ReportDocument['lots'][number] => ({
  item: lot.label, stones: lot.count, weight: lot.weight === null ? null : weighed(lot.weight, 'ct', settings, lot.weighedIn),
  plan: lot.plan === null ? '' : `${aimSentence(lot.plan.content)} Taken: ${drawnSentence(lot.plan.content)}`,
  results: results.map(({ number, outcome }) => ({ number, outcome })),
});

const itemOf = (item: ItemView, seal: string, settings: BalanceUncertainty): ReportDocument['items'][number] => ({
  label: item.label, kind: item.kind, seal, condition: item.condition, setting: item.setting,
  declared: { as: item.declared, value: item.declaredValue, count: item.count },
  grossWeight: item.grossWeight === null ? null : weighed(item.grossWeight, item.weightUnit, settings),
});

/** The machine-readable form of a report, from the same records as its pages. The same records give the same document. */
export function composeDocument({ source, model, modelDigest, records }: DocumentParts): ReportDocument {
  const { case: ofCase, laboratory, issue } = source;
  const limits = sectionOf(model, 'limits');
  return reportDocument.parse({
    schema: DOCUMENT_SCHEMA, language: model.language, demonstration: model.demonstration, draft: model.draft,
    number: model.number, revision: model.revision, issuedAt: source.at, issuedBy: issue?.by ?? '',
    subject: model.subject,
    relatesTo: 'Results relate only to the items described here, as received.',
    printed: { title: model.title, model: modelDigest, says: model.sections.flatMap(saysOf) },
    laboratory: { name: laboratory.name, address: laboratory.address, zone: laboratory.zone },
    client: { name: ofCase.client.name, address: ofCase.client.address, contact: clientContact(ofCase.client) },
    case: { number: ofCase.number, receivedAt: ofCase.receivedAt, asks: ofCase.asks },
    scope: limits?.scope ?? '', limits: limits?.limits ?? [], signatures: sectionOf(model, 'signatures')?.signatures ?? [],
    items: ofCase.parcels.flatMap((parcel) => parcel.items.map((item) => itemOf(item, parcel.sealNumber, laboratory.settings))),
    stones: source.stones.map((entry) => stoneOf(source, entry)),
    lots: (source.lots ?? []).map((one) => lotOf(one, laboratory.settings)),
    custody: source.custody.map(({ seq, at, itemLabel, person, content, previous, hash }) => ({ seq, at, item: itemLabel, person, content, previous, hash })),
    records: [...records],
  } satisfies ReportDocument);
}
