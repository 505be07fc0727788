import { getTableName, getTableColumns, type Table } from 'drizzle-orm';
import {
  analysis, calibration, caseRecord, checkpoint, client, conclusion, confirmation, credential, finding, houseText, instrument, instrumentCheck, item, keyStoreChoice, keyWrap, knownKey, knownSample, knownSampleTrial, knownSampleTrialWithdrawal, knownSampleWithdrawal,
  laboratory, lotRecord, parcel, person, photoAnalysis, photoAnalysisRun, photograph, pictureView, pieceMap, pieceMapVersion, rawRecord, report, reportTemplate, reportWithdrawal, runFile,
  sealedBundle, secondReading, signingAuthorisation, signingKey, spectrum, stone, testRun, weightRecord,
} from '../schema/index.ts';

/** A table whose rows the audit ledger vouches for. */
export type VouchedTable = {
  readonly table: string;
  /** Columns that go into a row's digest, as SQLite names them. */
  readonly columns: readonly string[];
  /** What a row is, for a person, where nothing more is known of it. */
  readonly noun: string;
  /** SQL of a name for one row `t`, for a person; null where what it leans on is gone. */
  readonly name: string;
};

const CASE = '(SELECT n.number FROM case_record n WHERE n.id = t.case_id)';
const STONE = `(SELECT s.label || ' of case ' || n.number FROM stone s JOIN case_record n ON n.id = s.case_id WHERE s.id = t.stone_id)`;
const ITEM = (id: string): string => `(SELECT i.label || ' of case ' || n.number FROM item i JOIN case_record n ON n.id = i.case_id WHERE i.id = ${id})`;
const RUN = (id: string): string => `(SELECT 'run R' || r.number || ' of case ' || n.number FROM test_run r JOIN case_record n ON n.id = r.case_id WHERE r.id = ${id})`;
const INSTRUMENT = '(SELECT i.name FROM instrument i WHERE i.id = t.instrument_id)';

/** `without`: large values whose SHA-256 stands in another column of the row, and is recomputed by itself. */
function vouched(table: Table, noun: string, name: string, without: readonly string[] = []): VouchedTable {
  const columns = Object.values(getTableColumns(table)).map((column) => column.name).filter((column) => !without.includes(column));
  return { table: getTableName(table), columns, noun, name };
}

/** Every table that holds records. Drafts and the counters of numbers are none. */
export const VOUCHED_TABLES: readonly VouchedTable[] = [
  vouched(laboratory, 'laboratory’s own record', `'laboratory’s own record'`),
  vouched(person, 'person', `'person “' || t.name || '”'`),
  vouched(client, 'client', `'client “' || t.name || '”'`),
  vouched(instrument, 'instrument', `'instrument “' || t.name || '”'`),
  vouched(instrumentCheck, 'check of an instrument', `'check of “' || ${INSTRUMENT} || '” of ' || substr(t.at, 1, 10)`),
  vouched(calibration, 'calibration', `'calibration of “' || ${INSTRUMENT} || '” of ' || substr(t.at, 1, 10)`),
  vouched(caseRecord, 'case', `'case ' || t.number`),
  vouched(parcel, 'parcel', `'parcel ' || t.ordinal || ' of case ' || ${CASE}`),
  vouched(item, 'item', `'item ' || t.label || ' of case ' || ${CASE}`),
  vouched(stone, 'stone', `'stone ' || t.label || ' of case ' || ${CASE}`),
  vouched(rawRecord, 'raw record', `'raw record “' || t.name || '” of case ' || ${CASE}`, ['content']),
  vouched(photograph, 'photograph', `'photograph “' || (SELECT w.name FROM raw_record w WHERE w.id = t.raw_record_id) || '” of case ' || ${CASE}`),
  vouched(testRun, 'run', `'run R' || t.number || ' of case ' || ${CASE}`),
  vouched(runFile, 'file of a run', `'file “' || (SELECT w.name FROM raw_record w WHERE w.id = t.raw_record_id) || '” of ' || ${RUN('t.run_id')}`),
  vouched(spectrum, 'spectrum', `'spectrum “' || t.title || '” of ' || ${RUN('t.run_id')}`, ['x', 'y']),
  vouched(analysis, 'analysis', `'analysis of “' || (SELECT s.title || '” of ' || ${RUN('s.run_id')} FROM spectrum s WHERE s.id = t.spectrum_id)`),
  vouched(finding, 'finding', `'finding “' || t.statement || '” of stone ' || ${STONE}`),
  vouched(conclusion, 'conclusion', `'conclusion ' || t.ordinal || ' of stone ' || ${STONE}`),
  vouched(secondReading, 'second reading', `'second reading of conclusion ' || (SELECT c.ordinal || ' of stone ' || s.label || ' of case ' || n.number
    FROM conclusion c JOIN stone s ON s.id = c.stone_id JOIN case_record n ON n.id = s.case_id WHERE c.id = t.conclusion_id)`),
  vouched(confirmation, 'confirmation', `'confirmation of conclusion ' || (SELECT c.ordinal || ' of stone ' || s.label || ' of case ' || n.number
    FROM conclusion c JOIN stone s ON s.id = c.stone_id JOIN case_record n ON n.id = s.case_id WHERE c.id = t.conclusion_id)`),
  vouched(knownSample, 'known sample', `'known sample “' || t.label || '”'`),
  vouched(knownSampleWithdrawal, 'withdrawal of a known sample', `'withdrawal of known sample “' || (SELECT k.label FROM known_sample k WHERE k.id = t.sample_id) || '”'`),
  vouched(knownSampleTrial, 'trial of a known sample', `'trial of known sample “' || (SELECT k.label FROM known_sample k WHERE k.id = t.sample_id) || '” of ' || substr(t.examined_at, 1, 10)`),
  vouched(knownSampleTrialWithdrawal, 'withdrawal of a trial', `'withdrawal of the trial of known sample “' || (SELECT k.label || '” of ' || substr(r.examined_at, 1, 10) FROM known_sample_trial r JOIN known_sample k ON k.id = r.sample_id WHERE r.id = t.trial_id)`),
  vouched(pieceMap, 'map of a piece', `'map ' || t.ordinal || ' of item ' || ${ITEM('t.item_id')}`),
  vouched(pieceMapVersion, 'version of a map', `'version ' || t.version || ' of map “' || t.name || '” of item ' || (SELECT ${ITEM('m.item_id')} FROM piece_map m WHERE m.id = t.map_id)`),
  vouched(pictureView, 'view of a photograph', `'view ' || t.version || ' of photograph “' || (SELECT w.name FROM photograph p JOIN raw_record w ON w.id = p.raw_record_id WHERE p.id = t.photograph_id) || '” of case ' || ${CASE}`),
  vouched(photoAnalysis, 'analysis of photographs', `'analysis of photographs (' || t.kind || ') of item ' || ${ITEM('t.item_id')}`),
  vouched(photoAnalysisRun, 'run from photographs', `${RUN('t.run_id')} || ', from photographs'`),
  vouched(lotRecord, 'entry of a lot', `'entry ' || t.ordinal || ' of lot ' || ${ITEM('t.item_id')}`),
  vouched(weightRecord, 'weight of a mounted stone', `'weight of ' || CASE WHEN t.stone_id IS NULL THEN 'item ' || ${ITEM('t.item_id')} ELSE 'stone ' || ${STONE} END`),
  vouched(houseText, 'text of the laboratory', `'text on “' || t.kind || '”, version ' || t.version`),
  vouched(reportTemplate, 'template of reports', `'template “' || json_extract(t.content, '$.name') || '”, version ' || t.version`),
  vouched(signingAuthorisation, 'authorisation', `'authorisation of ' || (SELECT p.name FROM person p WHERE p.id = t.holder_id) || ' from ' || t.since`),
  vouched(reportWithdrawal, 'withdrawal', `'withdrawal of report ' || (SELECT r.number || ', revision ' || r.revision FROM report r WHERE r.id = t.report_id)`),
  vouched(report, 'report', `'report ' || t.number || ', revision ' || t.revision`, ['model', 'pdf']),
  vouched(signingKey, 'key of the laboratory', `'laboratory’s key ' || t.id`),
  vouched(keyWrap, 'closed copy of the laboratory’s key', `'closed copy of the laboratory’s key ' || t.key_id`),
  vouched(keyStoreChoice, 'decision on the system’s key store', `'decision on the system’s key store of ' || t.at`),
  vouched(knownKey, 'key of another laboratory', `'key ' || t.id || ' of “' || t.laboratory || '”'`),
  vouched(credential, 'password', `coalesce('password of ' || (SELECT p.name FROM person p WHERE p.id = t.person_id), 'recovery sheet')`),
  vouched(checkpoint, 'checkpoint', `'checkpoint of ' || t.at`),
  vouched(sealedBundle, 'bundle of another laboratory', `'bundle “' || t.name || '” of “' || t.laboratory || '”'`),
];
