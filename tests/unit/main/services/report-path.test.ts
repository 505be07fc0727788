import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createBenchServices } from '../../../../main/services/bench-services.ts';
import { caseDocument, custodyDocument } from '../../../../app/bundle/case-document.ts';
import { sha256Hex } from '../../../../app/custody/chain.ts';
import { canonicalJson } from '../../../../app/custody/canonical-json.ts';
import { reportModel, sectionOf } from '../../../../app/report/report-model.ts';
import { reportDocument } from '../../../../app/report-document/report-document.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { INFRARED_DEFAULTS, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { theLaboratory } from '../../../../db/store/laboratory.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import type { TaskPool } from '../../../../main/workers/task-pool.ts';
import { attachedTo, readPdf } from '../print/read-pdf.ts';
import { INTAKE, jcampOf, openHouse, type House } from './work-house.ts';

let house: House;
let caseId: string;
let stoneId: string;
const stone = simulatedStone('natural-ia', 3);
const luminescence = { name: '../../a-1.jdx', bytes: jcampOf('A-1', simulatePhotoluminescence(stone, emissionInstrument(), 3), 'NANOMETERS') };
const infrared = { name: 'con', bytes: jcampOf('A-1', simulateInfrared(stone, INFRARED_DEFAULTS, 3), '1/CM', 'INFRARED SPECTRUM') };

async function start(options: Parameters<typeof openHouse>[0] = {}, intake: Partial<typeof INTAKE> = {}): Promise<void> {
  house = await openHouse(options);
  const taken = await house.takeIn({ parcels: [{ ...INTAKE.parcels[0]!, items: [INTAKE.parcels[0]!.items[0]!] }], ...intake });
  caseId = taken.caseId;
  stoneId = taken.stones['A-1']!;
}

async function record(): Promise<void> {
  const instrument = await house.done(house.examiner, 'instruments.save', { id: null, name: 'Bench instrument', methods: ['photoluminescence', 'infrared'], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true });
  await house.done(house.examiner, 'instruments.recordCheck', { instrumentId: instrument.id, passed: true, reference: 'reference diamond', outcome: 'in place' });
  const common = { stoneId, instrumentId: instrument.id, temperatureK: null, integrationMs: null, resolution: null, observation: null, note: '' };
  await house.done(house.examiner, 'runs.record', { ...common, method: 'photoluminescence', laserNm: 532, cautions: ['laser'], files: [luminescence] });
  await house.done(house.examiner, 'runs.record', { ...common, method: 'infrared', laserNm: null, cautions: [], files: [infrared, luminescence] });
}

async function decideAll(): Promise<void> {
  const { findings } = await house.done(house.examiner, 'stones.folder', { stoneId });
  for (const finding of findings.filter((entry) => entry.state === 'proposed')) {
    house.pass(1);
    await house.done(house.examiner, 'findings.decide', { findingId: finding.id, accept: true, reason: '' });
  }
}

const conclude = (conclusion: 'natural' | 'undetermined', departure = '') =>
  house.as(house.examiner, 'conclusions.conclude', { stoneId, conclusion, reasons: 'Characteristics are consistent with natural growth.', departure });

async function concludeNatural(): Promise<string> {
  house.pass(1);
  const concluded = await conclude('natural');
  if (!concluded.ok) throw new Error(concluded.error.message);
  return concluded.value.id;
}

async function toConfirmed(): Promise<void> {
  await record();
  await decideAll();
  const conclusionId = await concludeNatural();
  house.pass(5);
  await house.done(house.colleague, 'conclusions.confirm', { conclusionId, agrees: true, reason: '' });
  house.pass(5);
}

afterEach(() => house.close());

describe('findings and conclusions', () => {
  beforeEach(() => start());

  test('setting a finding aside needs a reason', async () => {
    await record();
    const { findings } = await house.done(house.examiner, 'stones.folder', { stoneId });
    const without = await house.as(house.examiner, 'findings.decide', { findingId: findings[0]!.id, accept: false, reason: ' ' });
    expect(without.ok ? null : Object.keys(without.error.fields ?? {})).toEqual(['reason']);
    expect(await house.done(house.examiner, 'findings.decide', { findingId: findings[0]!.id, accept: false, reason: 'A cosmic spike.' })).toMatchObject({ state: 'set-aside', reason: 'A cosmic spike.', decidedBy: 'Ada Invented' });
    const unknown = await house.as(house.examiner, 'findings.decide', { findingId: 'nowhere', accept: true, reason: '' });
    expect(unknown.ok ? null : unknown.error.code).toBe('not-found');
  });

  test('what an examiner saw stands beside the runs', async () => {
    const added = await house.done(house.examiner, 'findings.add', { stoneId, method: 'microscopy', statement: 'A crystal of garnet under the table.', strength: 'supporting', supports: 'natural', caution: '' });
    expect(added).toMatchObject({ origin: 'examiner', state: 'accepted', run: null, decidedBy: 'Ada Invented', counts: true });
  });

  test('no origin is concluded before the diamond check has passed', async () => {
    await house.done(house.examiner, 'findings.add', { stoneId, method: 'microscopy', statement: 'A crystal of garnet under the table.', strength: 'diagnostic', supports: 'natural', caution: '' });
    const refused = await conclude('natural', 'I am sure.');
    expect(refused.ok ? null : [refused.error.code, refused.error.message.includes('diamond check')]).toEqual(['refused', true]);
    expect(house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM conclusion')?.n).toBe(0);
  });

  test('a conclusion keeps the proposal as it stood; leaving it needs a written reason', async () => {
    await record();
    expect((await conclude('natural')).ok).toBe(false);
    await decideAll();
    const folder = await house.done(house.examiner, 'stones.folder', { stoneId });
    expect(folder.proposal.conclusion).toBe('natural');
    const bare = await conclude('undetermined');
    expect(bare.ok ? null : Object.keys(bare.error.fields ?? {})).toEqual(['departure']);
    const departed = await conclude('undetermined', 'The stone is too small to be sure.');
    expect(departed.ok ? departed.value : null).toMatchObject({ ordinal: 1, conclusion: 'undetermined', departure: 'The stone is too small to be sure.', proposal: folder.proposal, rules: folder.proposal.rules });
    const again = await conclude('natural', 'not needed');
    expect(again.ok ? again.value : null).toMatchObject({ ordinal: 2, departure: '' });
  });

  test('only a second person confirms, the newest conclusion, once', async () => {
    await record();
    await decideAll();
    const older = await concludeNatural();
    const newest = await concludeNatural();
    const answer = async (person: string, conclusionId: string, agrees = true, reason = ''): Promise<string | null> => {
      const answered = await house.as(person, 'conclusions.confirm', { conclusionId, agrees, reason });
      return answered.ok ? null : answered.error.code;
    };
    expect(await answer(house.colleague, 'nowhere')).toBe('not-found');
    expect(await answer(house.examiner, newest)).toBe('refused');
    expect(await answer(house.colleague, older)).toBe('conflict');
    expect(await answer(house.colleague, newest, false)).toBe('invalid-input');
    expect(await answer(house.colleague, newest)).toBeNull();
    expect(await answer(house.colleague, newest)).toBe('conflict');
  });

  test('a word that promises certainty is stopped at the field', async () => {
    await record();
    await decideAll();
    const answer = await house.as(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'natural', reasons: 'Guaranteed natural.', departure: '' });
    expect(answer.ok ? null : Object.keys(answer.error.fields ?? {})).toEqual(['reasons']);
  });
});

describe('the report', () => {
  test('tells what is missing until nothing is', async () => {
    await start({ address: '' }, { client: { name: 'Invented Client', address: '', email: '', phone: '', note: '' } });
    const missing = async (): Promise<string[]> => (await house.done(house.examiner, 'reports.prepare', { caseId })).missing;
    expect((await missing()).join(' ')).toMatch(/laboratory has no address.*neither address.*A-1 has no conclusion/);
    await record();
    await decideAll();
    const conclusionId = await concludeNatural();
    expect((await missing()).join(' ')).toContain('waits for a second person');
    await house.done(house.colleague, 'conclusions.confirm', { conclusionId, agrees: true, reason: '' });
    expect((await missing()).filter((sentence) => sentence.includes('A-1'))).toEqual([]);
    const refused = await house.as(house.colleague, 'reports.issue', { caseId });
    expect(refused.ok ? null : refused.error.code).toBe('refused');
    expect(refused.ok ? '' : refused.error.message).toContain('laboratory has no address');
  });

  test('does not name a line that the examiner set aside', async () => {
    await start();
    await record();
    const { findings } = await house.done(house.examiner, 'stones.folder', { stoneId });
    const line = findings.find((finding) => finding.run === 'R1' && finding.code.startsWith('centre:'))!;
    const named = async (): Promise<string[]> => {
      const { model } = await house.done(house.examiner, 'reports.prepare', { caseId });
      return sectionOf(model, 'results')!.stones[0]!.figures[0]!.figure.lines.map((drawn) => drawn.name);
    };
    for (const finding of findings) await house.done(house.examiner, 'findings.decide', { findingId: finding.id, accept: true, reason: '' });
    const before = await named();
    await house.done(house.examiner, 'findings.decide', { findingId: line.id, accept: false, reason: 'A line of the lamp.' });
    expect((await named()).length).toBeLessThan(before.length);
    expect(before).toContain('diamond Raman');
  });

  test('waits at the bench of those who may confirm it, and of nobody else', async () => {
    await start();
    await record();
    await decideAll();
    await concludeNatural();
    const clerk = await house.casebook.people.save({ at: house.now(), personId: house.examiner, operation: 'people.save' }, { id: null, name: 'Cleo Invented', initials: 'CI', roles: ['intake'], active: true });
    const { 'bench.today': today } = createBenchServices({ now: () => new Date(house.now()), manager: { current: () => house.casebook } } as unknown as Parameters<typeof createBenchServices>[0]);
    const waiting = async (personId: string) => {
      const answer = await today({}, { session: { personId }, signal: new AbortController().signal, emit: () => undefined });
      return answer.ok ? answer.value.toConfirm.length : answer.error.message;
    };
    expect([await waiting(house.colleague), await waiting(house.examiner), await waiting(clerk.ok ? clerk.value.id : '')]).toEqual([1, 0, 0]);
  });

  test('evidence newer than the conclusion stops the report', async () => {
    await start();
    await toConfirmed();
    house.pass(1);
    await house.done(house.examiner, 'findings.add', { stoneId, method: 'microscopy', statement: 'A feather at the girdle.', strength: 'neutral', supports: 'none', caution: '' });
    expect((await house.done(house.examiner, 'reports.prepare', { caseId })).missing.join(' ')).toContain('newer than its conclusion');
  });

  test('is numbered, frozen, and always the same bytes', async () => {
    await start();
    await toConfirmed();
    const draft = await house.done(house.examiner, 'reports.prepare', { caseId });
    expect(draft.missing).toEqual([]);
    expect(draft.model).toMatchObject({ draft: true, number: '', revision: 0 });
    const issued = await house.done(house.colleague, 'reports.issue', { caseId });
    expect(issued).toMatchObject({ number: 'S-2026-0001', revision: 1, stones: 1, issuedBy: 'Ben Invented', clientName: 'Invented Client' });
    const first = await house.done(house.examiner, 'reports.pdf', { reportId: issued.id });
    const second = await house.done(house.examiner, 'reports.pdf', { reportId: issued.id });
    expect(Buffer.compare(Buffer.from(first.pdf), Buffer.from(second.pdf))).toBe(0);
    expect(createHash('sha256').update(first.pdf).digest('hex')).toBe(issued.pdfSha256);
    expect(Buffer.from(first.pdf.subarray(0, 5)).toString()).toBe('%PDF-');
    expect((await house.casebook.cases.get(caseId))?.state).toBe('reported');
    house.pass(60);
    const bare = await house.as(house.colleague, 'reports.issue', { caseId });
    expect(bare.ok ? null : bare.error.message).toContain('Write why the report is amended.');
    await house.casebook.cases.amend({ at: house.now(), personId: house.examiner, operation: 'cases.amend' }, { caseId, asks: 'Natural, or grown?', dueOn: null, remarks: '' });
    const revision = await house.done(house.colleague, 'reports.issue', { caseId, reason: 'The client’s question was written down wrongly.' });
    expect(revision).toMatchObject({ number: 'S-2026-0001', revision: 2 });
    expect((await house.done(house.examiner, 'reports.list', { caseId })).map((row) => row.revision)).toEqual([2, 1]);
    expect(Buffer.compare(Buffer.from((await house.done(house.examiner, 'reports.pdf', { reportId: issued.id })).pdf), Buffer.from(first.pdf))).toBe(0);
    expect((await house.casebook.ledgers.verify({ at: house.now() }))?.parts.filter((part) => !part.sound)).toEqual([]);
  });

  test('says what the records say', async () => {
    await start();
    await toConfirmed();
    await house.done(house.colleague, 'reports.issue', { caseId });
    const stored = house.casebook.handle.read.get<{ model: string; model_digest: string }>('SELECT model, model_digest FROM report')!;
    expect(sha256Hex(stored.model)).toBe(stored.model_digest);
    const model = reportModel.parse(JSON.parse(stored.model));
    expect(canonicalJson(model)).toBe(stored.model);
    expect(model).toMatchObject({ number: 'S-2026-0001', draft: false, caseNumber: 'C-2026-0001' });
    expect(sectionOf(model, 'particulars')?.work.slice(0, 2)).toMatchObject([{ label: 'Received', value: '25 Nov 2026' }, { label: 'Tested', value: '25 Nov 2026' }]);
    const [first] = sectionOf(model, 'results')!.stones;
    expect(sectionOf(model, 'opinions')?.stones[0]?.conclusion).toMatchObject({ id: 'natural', examiner: 'Ada Invented', secondPerson: 'Ben Invented' });
    expect(first?.facts.find((fact) => fact.label === 'Weight')?.value).toBe('0.412 ct');
    expect(first?.figures.map((figure) => figure.heading)).toEqual(['Photoluminescence, laser 532 nm', 'Infrared']);
    expect(first?.figures[0]?.figure.lines.some((line) => line.name === 'diamond Raman')).toBe(true);
    expect(first?.notDone).toContain('Magnet');
    expect(sectionOf(model, 'raw-records')!.records.map((record) => [record.run, record.sha256])).toEqual([
      ['R1', createHash('sha256').update(luminescence.bytes).digest('hex')],
      ['R2', createHash('sha256').update(infrared.bytes).digest('hex')],
      ['R2', createHash('sha256').update(luminescence.bytes).digest('hex')],
    ]);
    expect(sectionOf(model, 'custody')!.entries.map((entry) => entry.what).join('; ')).toMatch(/received.*tested in R1.*tested in R2/);
    expect(sectionOf(model, 'signatures')!.signatures.map(({ role, name }) => `${role}: ${name}`)).toEqual(['examiner: Ada Invented', 'second person: Ben Invented', 'issuing person: Ben Invented']);
  });

  test('carries its raw records byte for byte and report.json, whose digest stands on its pages', async () => {
    await start();
    await toConfirmed();
    const issued = await house.done(house.colleague, 'reports.issue', { caseId });
    const { pdf } = await house.done(house.examiner, 'reports.pdf', { reportId: issued.id });
    const attached = await attachedTo(pdf);
    const document = reportDocument.parse(JSON.parse(Buffer.from(attached.get('report.json')!).toString('utf8')));
    expect(Buffer.from(attached.get('report.json')!).toString('utf8')).toBe(canonicalJson(document));
    const { pages } = await readPdf(pdf);
    expect(pages.at(-1)).toContain(sha256Hex(canonicalJson(document)));
    expect(document).toMatchObject({ number: 'S-2026-0001', revision: 1, draft: false, issuedBy: 'Ben Invented', case: { number: 'C-2026-0001' }, client: { name: 'Invented Client' } });
    expect(document.records.map(({ runs, attachedAs, sha256 }) => [runs, sha256, createHash('sha256').update(attached.get(attachedAs!)!).digest('hex')])).toEqual(
      [[['R1', 'R2'], luminescence], [['R2'], infrared]].map(([runs, file]) => [runs, ...Array<string>(2).fill(createHash('sha256').update((file as typeof infrared).bytes).digest('hex'))]));
    const stored = house.casebook.handle.read.get<{ model_digest: string }>('SELECT model_digest FROM report')!;
    expect(document.printed.model).toBe(stored.model_digest);
    const [stone] = document.stones;
    expect(stone?.opinion).toMatchObject({ conclusion: 'natural', by: 'Ada Invented', confirmation: { by: 'Ben Invented', agrees: true } });
    expect(stone?.measurements[0]).toEqual({ quantity: 'weight', result: { value: '0.412', unit: 'ct', uncertainty: null, covers: '' }, run: null, method: null, file: null });
    const nitrogen = stone!.measurements.find((one) => one.quantity === 'nitrogen in B centres')!;
    expect([nitrogen.run, nitrogen.result.unit, Number(nitrogen.result.uncertainty) > 0]).toEqual(['R2', 'ppm', true]);
    expect(stone?.runs[0]?.analyses[0]).toMatchObject({ pipeline: expect.any(String), tables: expect.any(String) });
    expect(stone?.runs[0]?.analyses[0]?.lines.some((line) => line.centre !== null && line.position.unit === 'nm' && line.position.uncertainty !== null)).toBe(true);
    for (const entry of document.custody) expect(entry.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(JSON.stringify(stone?.measurements)).not.toMatch(/natural|grown/);
  });

  test('is not issued while the laboratory’s key is locked: nothing is numbered, nothing kept', async () => {
    const locked = { code: 'locked', message: 'The laboratory’s key is locked.', next: 'Sign in again with your password to sign.' } as const;
    await start({ signer: { sign: async () => ({ ok: false, error: locked }) } });
    await toConfirmed();
    const answer = await house.as(house.colleague, 'reports.issue', { caseId });
    expect(answer.ok ? null : answer.error).toEqual(locked);
    expect(await house.done(house.examiner, 'reports.list', { caseId })).toEqual([]);
    expect(house.casebook.handle.read.get<{ last: number }>(`SELECT last FROM number_counter WHERE kind = 'report'`)?.last ?? 0).toBe(0);
    expect((await house.done(house.examiner, 'reports.preview', { caseId })).pdf.byteLength).toBeGreaterThan(1000);
  });

  test('a laboratory that allows no megabyte attaches no raw record and says so', async () => {
    await start();
    const { settings, ...laboratory } = theLaboratory(house.casebook.handle.read);
    await house.casebook.laboratory.save({ at: house.now(), personId: house.examiner, operation: 'laboratory.save' }, { ...laboratory, settings: { ...settings, attachMegabytes: 0 } });
    await toConfirmed();
    const issued = await house.done(house.colleague, 'reports.issue', { caseId });
    const { pdf } = await house.done(house.examiner, 'reports.pdf', { reportId: issued.id });
    const attached = await attachedTo(pdf);
    expect([...attached.keys()].filter((name) => /^(R\d|photo)/.test(name))).toEqual([]);
    const { records } = reportDocument.parse(JSON.parse(Buffer.from(attached.get('report.json')!).toString('utf8')));
    expect(records.map(({ attachedAs, leftOut }) => [attachedAs, leftOut.includes('larger than the 0 MB')])).toEqual([[null, true], [null, true]]);
    expect((await readPdf(pdf)).pages.join(' ')).toContain('except the 3 marked “not attached”');
  });

  test('a stone on which two persons disagree is reported as undetermined', async () => {
    await start();
    await record();
    await decideAll();
    const conclusionId = await concludeNatural();
    await house.done(house.colleague, 'conclusions.confirm', { conclusionId, agrees: false, reason: 'The line lies too near to a lamp line.' });
    house.pass(1);
    const { model, missing } = await house.done(house.examiner, 'reports.prepare', { caseId });
    expect(missing).toEqual([]);
    expect(sectionOf(model, 'opinions')?.stones[0]?.conclusion).toMatchObject({ id: 'undetermined', secondPerson: '' });
    expect(sectionOf(model, 'opinions')?.stones[0]?.conclusion?.reasons).toContain('The line lies too near to a lamp line.');
  });

  test('is drawn anew where its case changes meanwhile, and given up where it never rests', async () => {
    const inline = createInlinePool();
    let changes = 1;
    const amend = async (asks: string): Promise<void> => {
      await house.casebook.cases.amend({ at: house.now(), personId: house.examiner, operation: 'cases.amend' }, { caseId, asks, dueOn: null, remarks: '' });
    };
    const restless: TaskPool = {
      close: () => inline.close(),
      async run(name, payload, options) {
        const outcome = await inline.run(name, payload, options);
        if (name === 'render-report' && changes-- > 0) await amend(`asked anew ${changes}`);
        return outcome;
      },
    };
    await start({ pool: restless });
    await toConfirmed();
    await house.done(house.colleague, 'reports.issue', { caseId });
    const stored = house.casebook.handle.read.get<{ model: string }>('SELECT model FROM report')!;
    expect(sectionOf(reportModel.parse(JSON.parse(stored.model)), 'particulars')?.client.at(-1)?.value).toBe('asked anew 0');
    await amend('asked once more');
    changes = 100;
    const answer = await house.as(house.colleague, 'reports.issue', { caseId, reason: 'asked anew' });
    expect(answer.ok ? null : answer.error.code).toBe('conflict');
    expect(house.casebook.handle.read.get<{ last: number }>(`SELECT last FROM number_counter WHERE kind = 'report'`)?.last).toBe(1);
  });

  test('pages whose bytes no longer fit their digest are not handed out', async () => {
    await start();
    await toConfirmed();
    const issued = await house.done(house.colleague, 'reports.issue', { caseId });
    await house.casebook.handle.transact((tx) => {
      tx.run('DROP TRIGGER report_no_update');
      tx.run(`UPDATE report SET pdf = zeroblob(10)`);
      tx.written.forget();
    });
    const answer = await house.as(house.examiner, 'reports.pdf', { reportId: issued.id });
    expect(answer.ok ? null : answer.error.code).toBe('unreadable');
  });

  test('whose stored pages were changed along with the digest beside them is not handed out: the audit ledger knows another', async () => {
    await start();
    await toConfirmed();
    const issued = await house.done(house.colleague, 'reports.issue', { caseId });
    const other = Buffer.from('%PDF-1.7 other pages');
    await house.casebook.handle.transact((tx) => {
      tx.run('DROP TRIGGER report_no_update');
      tx.run('UPDATE report SET pdf = @other, pdf_sha256 = @digest', { other, digest: createHash('sha256').update(other).digest('hex') });
      tx.written.forget();
    });
    const answer = await house.as(house.examiner, 'reports.pdf', { reportId: issued.id });
    expect(answer.ok ? null : answer.error.code).toBe('unreadable');
  });
});

describe('the bundle of a case', () => {
  test('holds every byte, and proves it with common tools', async () => {
    await start();
    await toConfirmed();
    await house.done(house.colleague, 'reports.issue', { caseId });
    const bundle = await house.done(house.examiner, 'cases.bundle', { caseId });
    expect(bundle.name).toBe('C-2026-0001.zip');
    const files = unzipSync(bundle.zip);
    const names = Object.keys(files);
    const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
    const short = (bytes: Uint8Array): string => digest(bytes).slice(0, 8);
    const raw = [`cases/C-2026-0001/raw/R1-${short(luminescence.bytes)}-_.._a-1.jdx`, `cases/C-2026-0001/raw/R2-${short(infrared.bytes)}-_con`];
    expect(names.filter((name) => name.startsWith('cases/'))).toEqual(['case.json', 'custody.json', 'audit.json', 'reports/S-2026-0001.pdf'].map((name) => `cases/C-2026-0001/${name}`).concat(raw));
    expect([names[0], ...names.slice(-3)]).toEqual(['README.txt', 'SHA256SUMS', 'manifest.json', 'seal.txt']);
    expect(Buffer.compare(Buffer.from(files[raw[0]!]!), Buffer.from(luminescence.bytes))).toBe(0);
    const lines = Buffer.from(files['SHA256SUMS']!).toString().trim().split('\n');
    expect(lines).toEqual(names.slice(0, -3).map((name) => `${digest(files[name]!)}  ${name}`));

    const document = caseDocument.parse(JSON.parse(Buffer.from(files['cases/C-2026-0001/case.json']!).toString()));
    expect(document.stones[0]?.runs).toHaveLength(2);
    expect(document.rawRecords[0]?.runs).toEqual(['R1', 'R2']);
    const custody = custodyDocument.parse(JSON.parse(Buffer.from(files['cases/C-2026-0001/custody.json']!).toString()));
    expect(custody.entries.length).toBeGreaterThan(3);
    for (const entry of custody.entries) expect(sha256Hex(canonicalJson(entry.statement))).toBe(entry.hash);
  });

  test('an unknown case is not found', async () => {
    await start();
    for (const answer of [await house.as(house.examiner, 'cases.bundle', { caseId: 'nowhere' }), await house.as(house.examiner, 'reports.prepare', { caseId: 'nowhere' })]) {
      expect(answer.ok ? null : answer.error.code).toBe('not-found');
    }
  });
});
