import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { StoneFolder } from '../../../../app/contract/work.ts';
import { CONCLUSION_IDS } from '../../../../app/domain/conclusion.ts';
import { openCasebook, type Casebook } from '../../../../db/open-casebook.ts';
import { createWorkStores } from '../../../../db/store/work-stores.ts';
import { createBuildDemonstration } from '../../../../main/demonstration/build-demonstration.ts';
import { loadScenario } from '../../../../main/demonstration/load-scenario.ts';
import type { ScenarioStone } from '../../../../main/demonstration/scenario-schema.ts';
import { createSeededIds } from '../../../../main/demonstration/seeded-ids.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { createWorkServices } from '../../../../main/services/work-services.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';

const MIGRATIONS = fileURLToPath(new URL('../../../../db/migrations', import.meta.url));
/** A Monday soon after New Year: the scenario reaches into the year before, and over a weekend. */
const NOW = new Date('2027-01-11T10:00:00.000Z');

type Entry = { readonly stone: ScenarioStone; readonly label: string; readonly caseKey: string; readonly folder: StoneFolder };

const folder = mkdtempSync(path.join(tmpdir(), 'culet-demonstration-'));
const steps: { done: number; total: number; note: string }[] = [];
let casebook: Casebook;
let entries: Entry[] = [];

/** The scenario's stones beside what the casebook knows of them, matched by order. */
async function gather(): Promise<Entry[]> {
  const scenario = loadScenario();
  const services = createWorkServices({ casebook: () => casebook, signer: createKeyring(() => casebook), pool: createInlinePool(), now: () => NOW, newId: () => 'none' });
  const gathered: Entry[] = [];
  const rows = (await casebook.cases.list({ text: '', state: 'all', limit: 100, offset: 0 })).rows;
  for (const one of scenario.cases) {
    const client = scenario.clients.find((entry) => entry.key === one.client)!;
    const row = rows.find((entry) => entry.clientName === client.name)!;
    const view = await casebook.cases.get(row.id);
    const made = view!.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.stones));
    const meant = one.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.stones));
    for (const [index, summary] of made.entries()) {
      const found = await services['stones.folder']({ stoneId: summary.id }, { session: { personId: null }, signal: new AbortController().signal, emit() {} });
      if (!found.ok) throw new Error(found.error.message);
      gathered.push({ stone: meant[index]!, label: summary.label, caseKey: one.key, folder: found.value });
    }
  }
  return gathered;
}

beforeAll(async () => {
  const opened = openCasebook({ file: path.join(folder, 'demo.culet'), mustExist: false, migrationsFolder: MIGRATIONS, now: () => NOW, newId: createSeededIds(1, () => NOW) });
  if (!opened.ok) throw new Error(opened.error.message);
  casebook = opened.value;
  await createBuildDemonstration({ pool: createInlinePool(), now: () => NOW })(casebook, (done, total, note) => steps.push({ done, total, note }));
  entries = await gather();
}, 120_000);

afterAll(() => {
  casebook.close();
  rmSync(folder, { recursive: true });
});

const GROWN = /^(cvd|hpht)/;
const NOT_DIAMOND = /^(moissanite|cubic-zirconia|glass|corundum)$/;

describe('the demonstration casebook', () => {
  test('its lots are found by number and by words', async () => {
    const lot = casebook.handle.read.get<{ id: string; label: string; declared: string; number: string; client: string }>(
      `SELECT i.id, i.label, i.declared, n.number, k.name AS client FROM item i JOIN case_record n ON n.id = i.case_id JOIN client k ON k.id = n.client_id WHERE i.kind = 'lot'`)!;
    const found = async (text: string) => (await casebook.find.anything(text)).filter(({ kind }) => kind === 'lot').map(({ id }) => id);
    expect(await found(`${lot.number} ${lot.label}`)).toContain(lot.id);
    expect(await found(lot.declared)).toContain(lot.id);
    expect(await found(lot.client)).toContain(lot.id);
    expect(await found(`${lot.client} no such word`)).toEqual([]);
  });

  test('the brooch’s photographs under both lamps are compared, and only the stone that grew otherwise stands out', async () => {
    const brooch = entries.filter(({ caseKey, folder: { item } }) => caseKey === entries.find(({ stone }) => stone.position === 'ring 18')!.caseKey && item.kind === 'jewellery');
    const [analysis, ...others] = await createWorkStores(casebook.handle, () => 'none').photoAnalyses.ofItem(brooch[0]!.folder.item.id);
    expect(others).toEqual([]);
    if (analysis?.content.kind !== 'pair') throw new Error('the brooch has no comparison');
    const { stones } = analysis.content.result;
    expect(stones).toHaveLength(brooch.length);
    const out = stones.filter((one) => one.standsOut).map((one) => brooch.find(({ folder }) => folder.stone.id === one.stoneId)!);
    expect(out.map(({ label, stone }) => [label, stone.is.startsWith('cvd') || stone.is.startsWith('hpht')])).toEqual([['A-7', true]]);
  });

  test('is marked, and its ledgers, raw records, curves and reports verify', async () => {
    expect((await casebook.laboratory.get())?.isDemonstration).toBe(true);
    const verified = await casebook.ledgers.verify({ at: NOW.toISOString() });
    expect(verified?.parts.filter((part) => !part.sound)).toEqual([]);
    expect(verified?.parts.find((part) => part.part === 'custody ledger')?.checked).toBeGreaterThan(200);
  });

  test('concludes what the evidence proposes, or says in writing why not', () => {
    const concluded = entries.flatMap(({ folder: { conclusions }, label, caseKey }) => conclusions.map((conclusion) => ({ ...conclusion, where: `${caseKey} ${label}` })));
    expect(concluded.length).toBeGreaterThan(20);
    for (const { conclusion, proposal, departure, where } of concluded) expect([where, conclusion === proposal.conclusion || departure.length > 40]).toEqual([where, true]);
    expect(concluded.filter(({ departure }) => departure !== '')).toHaveLength(2);
    expect([...new Set(concluded.map(({ conclusion }) => conclusion))].sort()).toEqual([...CONCLUSION_IDS].sort());
  });

  test('never proposes natural for a laboratory-grown stone, nor an origin for what is not diamond', () => {
    const grown = entries.filter(({ stone }) => GROWN.test(stone.is));
    const imitations = entries.filter(({ stone }) => NOT_DIAMOND.test(stone.is));
    expect([grown.length > 5, imitations.length]).toEqual([true, 2]);
    for (const { folder: { proposal, conclusions }, caseKey, label } of grown) {
      expect([caseKey, label, [proposal.conclusion, ...conclusions.map((entry) => entry.conclusion)].includes('natural')]).toEqual([caseKey, label, false]);
    }
    for (const { folder: { proposal } } of imitations) expect(['not-diamond', 'undetermined']).toContain(proposal.conclusion);
  });

  test('never concludes that a natural stone was grown', () => {
    for (const { stone, folder: { conclusions } } of entries.filter((entry) => entry.stone.is.startsWith('natural'))) {
      for (const { conclusion } of conclusions) expect([stone.is, conclusion.startsWith('grown')]).toEqual([stone.is, false]);
    }
  });

  test('holds cases at every stage', async () => {
    const bench = await casebook.bench.today(NOW.toISOString(), null);
    const next = (rows: readonly { clientName: string; next: string }[]) => rows.map((row) => `${row.clientName}: ${row.next}`);
    expect(next(bench.overdue)).toEqual(['Belltower Antiques: 4 stones to conclude, next A-1 long-wave fluorescence']);
    expect(next(bench.dueSoon)).toEqual(['Oswin Brackwater: examiners disagree on A-1', 'Quillfeather Auctions: second person to confirm 3 stones', 'Thistledown Insurance: 14 stones to conclude, next A-6 microscopy']);
    expect(next(bench.later)).toEqual(['Saltpan Lane Pawnbrokers: 3 stones to test']);
    expect(next(bench.waiting)).toEqual(['Harrow & Pell: reported, to be collected']);
    expect(bench.counts).toMatchObject({ cases: 7, stones: 47, reports: 2, instrumentsToCheck: 2 });
    expect(bench.house).toMatchObject({ itemsOut: 1, itemsOverdue: 1 });
    expect(bench.house.weightsCompared - bench.house.weightsAgree).toBe(1);
    expect(bench.toConfirm.length).toBeGreaterThan(3);
    const returned = await casebook.cases.list({ text: '', state: 'returned', limit: 10, offset: 0 });
    expect(returned.rows.map((row) => row.clientName)).toEqual(['Marrow Lane Jewellers']);
  });

  test('keeps the damaged file with its bytes and its sentence, and reads the same stone later', () => {
    const { folder: { runs } } = entries.find((entry) => entry.caseKey === 'belltower-lot' && entry.label === 'A-3')!;
    const [broken, again] = runs.filter((run) => run.method === 'photoluminescence');
    expect(broken?.files[0]).toMatchObject({ outcome: 'refused' });
    expect(broken?.files[0]?.error?.message.length).toBeGreaterThan(20);
    expect(broken?.files[0]?.size).toBeGreaterThan(5000);
    expect(again?.files[0]).toMatchObject({ outcome: 'read' });
  });

  test('states the unit of the bare file once; the instrument remembers', () => {
    const runOf = (label: string) => entries.find((entry) => entry.caseKey === 'belltower-lot' && entry.label === label)!.folder.runs.find((run) => run.method === 'photoluminescence')!;
    for (const label of ['A-1', 'A-2']) expect(runOf(label).spectra[0]).toMatchObject({ xUnit: 'angstrom', unitStated: true });
  });

  test('findings of the lapsed and of the unchecked instrument are there and do not count', () => {
    const uncounted = entries.flatMap(({ folder: { runs, findings } }) => runs.filter((run) => !['in-order', 'no-instrument'].includes(run.instrumentState)).map((run) => ({ run, findings: findings.filter((finding) => finding.runId === run.id) })));
    expect(new Set(uncounted.map(({ run }) => `${run.instrument} ${run.instrumentState}`))).toEqual(new Set(['Ultraviolet and visible bench lapsed', 'Deep-ultraviolet viewer 2 never-checked']));
    for (const { findings } of uncounted) expect(findings.length > 0 && findings.every((finding) => !finding.counts)).toBe(true);
  });

  test('tells how far it has come, to the end', () => {
    expect(steps.map((step) => step.done)).toEqual(steps.map((_, i) => i + 1));
    expect(steps.at(-1)?.done).toBe(steps.at(-1)?.total);
    expect(steps.every((step) => step.note !== '')).toBe(true);
  });
});
