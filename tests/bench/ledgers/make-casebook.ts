import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { COLOUR_CLASSES } from '../../../app/domain/colour-class.ts';
import { CONCLUSION_IDS } from '../../../app/domain/conclusion.ts';
import { houseSettings } from '../../../app/domain/house-settings.ts';
import { seededRandom } from '../../../app/spectra/simulate/seeded-random.ts';
import type { WriteTx } from '../../../db/handle.ts';
import { appendAudit } from '../../../db/ledger/append-audit.ts';
import { appendCustody } from '../../../db/ledger/append-custody.ts';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';

const MIGRATIONS = path.resolve(import.meta.dirname, '../../../db/migrations');
/** A laboratory's stones of ten years, and the entries that each of them leaves in the two ledgers. */
export const STONES_A_CASE = 10;
const CUSTODY_A_STONE = 3;
const AUDIT_A_STONE = 6.1;
const CASES_A_TRANSACTION = 20;
const FIRST_YEAR = 2016;
const YEARS = 10;
const MINUTE = 60_000;
const START = Date.parse('2016-01-04T08:00:00.000Z');

const CLIENTS = ['Marrow Lane Jewellers', 'Müller & Söhne', 'Hôtel des Ventes du Port', 'Łódź Antiques', 'Saffron Row', 'Invented Estates'];
const SHAPES = ['round brilliant', 'cushion', 'old cut', 'emerald cut', 'pear', 'marquise'];
const SEEN = ['Emission line at 736.8 nm, SiV−', 'Platelet peak at 1365 cm⁻¹', 'N3 absorption at 415.2 nm', 'Blue fluorescence, moderate', 'Strain pattern, cross-hatched', 'No boron seen'];

export type Made = { readonly file: string; readonly casebook: Casebook; readonly ms: number };

/** Stones that give about so many ledger entries. */
export const stonesFor = (entries: number): number => Math.ceil(entries / (CUSTODY_A_STONE + AUDIT_A_STONE) / STONES_A_CASE) * STONES_A_CASE;

const fileIn = (folder: string): string => path.join(folder, 'Casebook.culet');

function open(file: string, newId: () => string): Casebook {
  const opened = openCasebook({ file, mustExist: false, migrationsFolder: MIGRATIONS, now: () => new Date(START), newId });
  if (!opened.ok) throw new Error(opened.error.message);
  return opened.value;
}

/** The casebook that an earlier run left in the folder. */
export function openMade(folder: string): Made {
  const started = performance.now();
  const file = fileIn(folder);
  const casebook = open(file, randomUUID);
  return { file, casebook, ms: performance.now() - started };
}

/** An invented casebook with so many stones, written through the program's own ledgers; the same at every run. */
export async function makeCasebook(folder: string, stones: number, progress: (made: number) => void): Promise<Made> {
  const started = performance.now();
  const random = seededRandom(20261125);
  let ids = 0;
  /** Cases of each year so far. */
  const numbered = new Map<number, number>();
  let minutes = 0;
  const newId = (): string => `01900000-0000-7000-8000-${String(++ids).padStart(12, '0')}`;
  const at = (): string => new Date(START + MINUTE * minutes++).toISOString();
  const file = fileIn(folder);
  const casebook = open(file, newId);
  const ada = await casebook.laboratory.create(at(), { name: 'Invented Laboratory', address: 'Nowhere 1', zone: 'Europe/Berlin', logo: null, isDemonstration: true, settings: houseSettings.parse({}) },
    { name: 'Ada Invented', initials: 'AI', roles: ['manager', 'examiner', 'intake'] });
  const ben = await casebook.people.save({ at: at(), personId: ada, operation: 'people.save' }, { id: null, name: 'Ben Invented', initials: 'BI', roles: ['second-examiner', 'appraiser'], active: true });
  if (!ben.ok) throw new Error(ben.error.message);
  const clients = CLIENTS.map(() => newId());
  const pick = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
  const run = (tx: WriteTx, table: string, values: readonly (string | number | null)[]): void => { tx.run(`INSERT INTO ${table} VALUES (${values.map(() => '?').join(', ')})`, values); };
  const ofAda = (operation: string) => ({ at: at(), personId: ada, operation });

  const makeStone = (tx: WriteTx, caseId: string, parcelId: string, ordinal: number): void => {
    const itemId = newId();
    const stoneId = newId();
    const label = String.fromCharCode(65 + ordinal);
    run(tx, 'item', [itemId, caseId, parcelId, label, 'loose', 'one stone, as declared', '', 4120, 'ct', 1, null, '']);
    run(tx, 'stone', [stoneId, caseId, itemId, 1, `${label}-1`, random.below(4) === 0 ? 1 : 0, '', pick(SHAPES), 4120 + random.below(9000), '', pick(COLOUR_CLASSES)]);
    appendAudit(tx, ofAda('stones.add'), { subject: stoneId, caseId, content: { stone: { label: `${label}-1`, mounted: false } } });
    for (const event of ['received', 'weighed', 'tested'] as const) {
      appendCustody(tx, ofAda('custody.append'), { caseId, itemId, content: { event, place: `Safe ${random.below(5)}`, ...(event === 'weighed' && { weight: 4120, weightUnit: 'ct' as const }) } });
    }
    const findings = [newId(), newId()];
    for (const id of findings) {
      run(tx, 'finding', [id, caseId, stoneId, null, null, 'examiner', 'own-words', pick(SEEN), 'clear', 'nothing', 'photoluminescence', '', '', 'accepted', '', ada, at(), at()]);
      appendAudit(tx, ofAda('findings.add'), { subject: id, caseId, content: { stone: `${label}-1`, statement: pick(SEEN), accept: true } });
    }
    const conclusion = pick(CONCLUSION_IDS);
    const conclusionId = newId();
    run(tx, 'conclusion', [conclusionId, caseId, stoneId, 1, conclusion, 'The lines and the pattern agree.', '{}', 'rules', JSON.stringify(findings), '', ada, at()]);
    appendAudit(tx, ofAda('conclusions.conclude'), { subject: conclusionId, caseId, content: { stone: `${label}-1`, ordinal: 1, conclusion, reasons: 'The lines and the pattern agree.', departure: '', counted: findings } });
    run(tx, 'confirmation', [newId(), conclusionId, ben.value.id, random.below(30) === 0 ? 0 : 1, '', at(), null, null]);
    appendAudit(tx, { ...ofAda('conclusions.confirm'), personId: ben.value.id }, { subject: conclusionId, caseId, content: { stone: `${label}-1`, conclusion, agrees: true } });
    appendAudit(tx, ofAda('stones.amend'), { subject: stoneId, caseId, content: { stone: `${label}-1`, before: { measurements: '' }, after: { measurements: '' } } });
  };

  const makeCase = (tx: WriteTx, index: number): void => {
    const caseId = newId();
    const parcelId = newId();
    const year = FIRST_YEAR + Math.floor((index * YEARS) / Math.max(1, stones / STONES_A_CASE));
    const ordinal = (numbered.get(year) ?? 0) + 1;
    numbered.set(year, ordinal);
    const number = `C-${year}-${String(ordinal).padStart(4, '0')}`;
    const received = at();
    run(tx, 'case_record', [caseId, number, pick(clients), received, null, 'Natural or grown?', pick(['', 'inherited', 'for the insurer']), 'open', ada, received]);
    run(tx, 'parcel', [parcelId, caseId, 1, `T-${index}`, '']);
    for (let ordinal = 0; ordinal < STONES_A_CASE; ordinal++) makeStone(tx, caseId, parcelId, ordinal);
    appendAudit(tx, ofAda('cases.takeIn'), { subject: number, caseId, content: { number } });
  };

  casebook.handle.transactNow((tx) => {
    clients.forEach((id, i) => { run(tx, 'client', [id, CLIENTS[i]!, `${i} Nowhere Lane`, '', '', '', at()]); });
    appendAudit(tx, ofAda('clients.save'), { subject: 'clients', caseId: null, content: {} });
  });
  for (let index = 0; index * STONES_A_CASE < stones; index += CASES_A_TRANSACTION) {
    casebook.handle.transactNow((tx) => {
      for (let i = index; i < index + CASES_A_TRANSACTION && i * STONES_A_CASE < stones; i++) makeCase(tx, i);
    });
    progress(Math.min(stones, (index + CASES_A_TRANSACTION) * STONES_A_CASE));
  }
  casebook.handle.transactNow((tx) => { for (const [year, last] of numbered) run(tx, 'number_counter', ['case', year, last]); });
  return { file, casebook, ms: performance.now() - started };
}
