import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Input } from '../../../../app/contract/index.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { infraredInstrument, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { columnsOf, jcampOf, openHouse, type House } from './work-house.ts';

let house: House;
let taken: Awaited<ReturnType<House['takeIn']>>;
let laser: string;
beforeEach(async () => {
  house = await openHouse();
  taken = await house.takeIn();
  laser = (await house.done(house.examiner, 'instruments.save', { id: null, name: 'Bench laser', methods: ['photoluminescence', 'raman'], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true })).id;
  await house.done(house.examiner, 'instruments.recordCheck', { instrumentId: laser, passed: true, reference: 'reference diamond', outcome: 'in place' });
});
afterEach(() => house.close());

const curve = simulatePhotoluminescence(simulatedStone('natural-ia', 3), emissionInstrument(), 3);
const file = { name: 'a-1.jdx', bytes: jcampOf('A-1', curve, 'NANOMETERS') };
const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const run = (change: Partial<Input<'runs.record'>> = {}): Input<'runs.record'> => ({
  stoneId: taken.stones['A-1']!, method: 'photoluminescence', instrumentId: laser, laserNm: 532, temperatureK: null, integrationMs: null, resolution: null,
  cautions: ['laser'], files: [file], observation: null, note: '', ...change,
});
const byEye = (observation: NonNullable<Input<'runs.record'>['observation']>, change: Partial<Input<'runs.record'>> = {}): Input<'runs.record'> =>
  run({ method: observation.method, instrumentId: null, laserNm: null, cautions: ['ultraviolet'], files: [], observation, ...change });

describe('trying files', () => {
  test('tells what is in them and keeps nothing', async () => {
    const trials = await house.done(house.examiner, 'runs.tryFiles', { caseId: taken.caseId, instrumentId: laser, files: [file, { name: 'notes.txt', bytes: new TextEncoder().encode('no numbers here') }] });
    expect(trials[0]).toMatchObject({ name: 'a-1.jdx', sha256: digestOf(file.bytes), size: file.bytes.byteLength, format: 'jcamp-dx', error: null, alreadyIn: null });
    expect(trials[0]?.blocks[0]).toMatchObject({ xUnit: 'nm', points: curve.x.length, firstX: curve.x[0] });
    expect(trials[1]?.error?.message).toContain('notes.txt');
    expect(house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM raw_record')?.n).toBe(0);
    expect(house.events.length).toBeGreaterThan(0);
  });

  test('notices bytes that the case keeps already, and twins among the files', async () => {
    await house.done(house.examiner, 'runs.record', run());
    const trials = await house.done(house.examiner, 'runs.tryFiles', { caseId: taken.caseId, instrumentId: laser, files: [{ ...file, name: 'copy.jdx' }, { name: 'x.txt', bytes: columnsOf(curve) }, { name: 'y.txt', bytes: columnsOf(curve) }] });
    expect(trials.map((trial) => trial.alreadyIn)).toEqual([{ run: 'R1', name: 'a-1.jdx' }, null, { run: 'this run', name: 'x.txt' }]);
  });

  test('a cancelled trial says so', async () => {
    const stop = new AbortController();
    stop.abort();
    const answer = await house.as(house.examiner, 'runs.tryFiles', { caseId: taken.caseId, instrumentId: null, files: [file] }, stop.signal);
    expect(answer.ok ? null : answer.error.code).toBe('cancelled');
  });
});

describe('infrared', () => {
  const infrared = simulateInfrared(simulatedStone('natural-ia', 3, { nitrogenPpm: { A: 200, B: 100, C: 0, Nplus: 0 } }), infraredInstrument(), 3);
  const setCoefficient = async (twoPhononCoefficient: number): Promise<void> => {
    const { name, address, zone, logo, settings } = (await house.casebook.laboratory.get())!;
    await house.casebook.laboratory.save({ at: house.now(), personId: house.examiner, operation: 'laboratory.save' }, { name, address, zone, logo, settings: { ...settings, twoPhononCoefficient } });
  };
  test('amounts stand on the laboratory’s own lattice coefficient, at recording and when analysed again', async () => {
    await setCoefficient(12.6);
    const recorded = await house.done(house.examiner, 'runs.record', run({ method: 'infrared', instrumentId: null, laserNm: null, cautions: [], files: [{ name: 'ir.jdx', bytes: jcampOf('IR', infrared, '1/CM', 'INFRARED SPECTRUM') }] }));
    const first = recorded.spectra[0]!;
    expect(first.analysis?.result.parameters.twoPhononCoefficient).toBe(12.6);
    await setCoefficient(12);
    const again = await house.done(house.examiner, 'runs.analyse', { spectrumId: first.id, parameters: { method: 'infrared' } });
    expect(again.analysis?.result.parameters.twoPhononCoefficient).toBe(12);
    expect(first.analysis!.result.infrared!.nitrogenPpm.A / again.analysis!.result.infrared!.nitrogenPpm.A).toBeCloseTo(1.05, 6);
  });
});

describe('recording a run', () => {
  test('keeps bytes, curve, analysis, findings, custody and audit in one go', async () => {
    const recorded = await house.done(house.examiner, 'runs.record', run());
    expect(recorded).toMatchObject({ number: 'R1', instrument: 'Bench laser', instrumentState: 'in-order', laserNm: 532, by: 'Ada Invented', warnings: [] });
    expect(recorded.files[0]).toMatchObject({ outcome: 'read', sha256: digestOf(file.bytes), error: null });
    expect(recorded.spectra[0]?.analysis?.result.diamondRaman?.present).toBe(true);
    expect(recorded.reads).toContain('diamond line present');
    const folder = await house.done(house.examiner, 'stones.folder', { stoneId: taken.stones['A-1']! });
    expect(folder.findings.length).toBeGreaterThan(0);
    expect(folder.findings.every((finding) => finding.state === 'proposed' && finding.run === 'R1' && finding.counts)).toBe(true);
    const custody = await house.casebook.custody.list({ caseId: taken.caseId, itemId: taken.items['A']!, limit: 1, offset: 0 });
    expect(custody.rows[0]?.content).toMatchObject({ event: 'tested', run: 'R1' });
    const raw = await house.done(house.examiner, 'raw.content', { rawRecordId: recorded.files[0]!.rawRecordId });
    expect(Buffer.compare(Buffer.from(raw.bytes), Buffer.from(file.bytes))).toBe(0);
    expect((await house.casebook.ledgers.verify({ at: house.now() }))?.parts.filter((part) => !part.sound)).toEqual([]);
  });

  test('curves are recomputed the same, ascending, from what is stored', async () => {
    const reversed = { ...curve, x: curve.x.slice().reverse(), y: curve.y.slice().reverse() };
    const recorded = await house.done(house.examiner, 'runs.record', run({ files: [{ name: 'down.jdx', bytes: jcampOf('down', reversed, 'NANOMETERS') }] }));
    const curves = await house.done(house.examiner, 'spectra.curves', { spectrumId: recorded.spectra[0]!.id });
    expect(curves).toMatchObject({ xUnit: 'nm', laserNm: 532 });
    expect(curves.x.length).toBe(curve.x.length);
    expect([curves.smoothed.length, curves.baseline.length]).toEqual([curve.x.length, curve.x.length]);
    for (let i = 1; i < curves.x.length; i += 1) expect(curves.x[i]! > curves.x[i - 1]!).toBe(true);
    expect(await house.done(house.examiner, 'spectra.curves', { spectrumId: recorded.spectra[0]!.id })).toEqual(curves);
  });

  test('a curve whose stored points were altered is not drawn', async () => {
    const recorded = await house.done(house.examiner, 'runs.record', run());
    await house.casebook.handle.transact((tx) => {
      tx.run('DROP TRIGGER spectrum_no_update');
      tx.run('UPDATE spectrum SET y = zeroblob(length(y))');
      tx.written.forget();
    });
    const answer = await house.as(house.examiner, 'spectra.curves', { spectrumId: recorded.spectra[0]!.id });
    expect(answer.ok ? null : answer.error.code).toBe('unreadable');
    expect((await house.casebook.ledgers.verify({ at: house.now() }))?.parts.find((part) => part.part === 'spectra')?.sound).toBe(false);
  });

  test('a file that can’t be read is kept with the sentence, and no curve enters', async () => {
    const broken = new TextEncoder().encode('500.0 1\n501.0 x\n502.0 3\n');
    const recorded = await house.done(house.examiner, 'runs.record', run({ files: [{ name: 'broken.txt', bytes: broken }] }));
    expect(recorded.spectra).toEqual([]);
    expect(recorded.files[0]?.outcome).toBe('refused');
    expect(recorded.files[0]?.error?.message).toContain('broken.txt');
    const raw = await house.done(house.examiner, 'raw.content', { rawRecordId: recorded.files[0]!.rawRecordId });
    expect([...raw.bytes]).toEqual([...broken]);
  });

  test('the same line in several files of a run is one finding, which says in how many curves', async () => {
    const files = [3, 4, 5, 6].map((noise) => ({ name: `a-${noise}.jdx`, bytes: jcampOf(`A-${noise}`, simulatePhotoluminescence(simulatedStone('natural-ia', 3), emissionInstrument(), noise), 'NANOMETERS') }));
    await house.done(house.examiner, 'runs.record', run({ files }));
    const findings = house.casebook.handle.read.all<{ code: string; statement: string }>('SELECT code, statement FROM finding');
    expect(new Set(findings.map(({ code }) => code)).size).toBe(findings.length);
    expect(findings.find(({ code }) => code === 'diamond-line:present')?.statement).toMatch(/, in 4 curves\.$/);
    const spectrumId = house.casebook.handle.read.get<{ id: string }>(`SELECT a.spectrum_id AS id FROM finding f JOIN analysis a ON a.id = f.analysis_id WHERE f.code = 'diamond-line:present'`)!.id;
    const decided = house.casebook.handle.read.get<{ id: string }>(`SELECT id FROM finding WHERE code = 'diamond-line:present'`)!.id;
    await house.done(house.examiner, 'findings.decide', { findingId: decided, accept: true, reason: '' });
    const stored = house.casebook.handle.read.get<{ parameters: string }>('SELECT parameters FROM analysis WHERE spectrum_id = ?', [spectrumId]);
    await house.done(house.examiner, 'runs.analyse', { spectrumId, parameters: JSON.parse(stored!.parameters) as Input<'runs.analyse'>['parameters'] });
    expect(house.casebook.handle.read.get<{ n: number }>(`SELECT count(*) AS n FROM finding WHERE code = 'diamond-line:present' AND state <> 'replaced'`)!.n).toBe(1);
  });

  test('the same bytes in a second run share the record and say so', async () => {
    const first = await house.done(house.examiner, 'runs.record', run());
    const second = await house.done(house.examiner, 'runs.record', run({ files: [{ ...file, name: 'again.jdx' }] }));
    expect(second.number).toBe('R2');
    expect(second.files[0]?.rawRecordId).toBe(first.files[0]?.rawRecordId);
    expect(second.files[0]?.warnings.find((warning) => warning.code === 'already-kept')?.message).toContain('R1');
    expect(house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM raw_record')?.n).toBe(1);
  });

  test('the unit is asked for once and then remembered by the instrument, with its laser', async () => {
    const bare = { name: 'bare.txt', bytes: columnsOf({ ...curve, x: curve.x.map((nm) => nm * 10) }) };
    const asked = await house.as(house.examiner, 'runs.record', run({ files: [bare] }));
    expect(asked.ok ? null : Object.keys(asked.error.fields ?? {})).toEqual(['files.0.xUnit']);
    expect(house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM test_run')?.n).toBe(0);
    const stated = await house.done(house.examiner, 'runs.record', run({ files: [{ ...bare, xUnit: 'angstrom' }] }));
    expect(stated.spectra[0]).toMatchObject({ xUnit: 'angstrom', unitStated: true });
    expect(stated.spectra[0]?.analysis?.result.diamondRaman?.present).toBe(true);
    expect((await house.done(house.examiner, 'instruments.list', {}))[0]?.remembers).toMatchObject({ xUnit: 'angstrom', laserNm: 532 });
    const [trial] = await house.done(house.examiner, 'runs.tryFiles', { caseId: taken.caseId, instrumentId: laser, files: [bare] });
    expect(trial?.blocks[0]?.xUnit).toBe('angstrom');
    const later = await house.done(house.examiner, 'runs.record', run({ stoneId: taken.stones['C-1']!, files: [bare] }));
    expect(later.spectra[0]).toMatchObject({ xUnit: 'angstrom', unitStated: true });
    const said = await house.done(house.examiner, 'runs.record', run());
    expect(said.spectra[0]).toMatchObject({ xUnit: 'nm', unitStated: false });
  });

  test('findings of an instrument not in order are listed and do not count', async () => {
    house.pass(8 * 24 * 60);
    const recorded = await house.done(house.examiner, 'runs.record', run());
    expect(recorded.instrumentState).toBe('lapsed');
    expect(recorded.warnings?.map((warning) => warning.code)).toEqual(['instrument-lapsed']);
    await house.done(house.examiner, 'instruments.recordCheck', { instrumentId: laser, passed: true, reference: 'reference', outcome: 'fine' });
    const folder = await house.done(house.examiner, 'stones.folder', { stoneId: taken.stones['A-1']! });
    expect(folder.findings.every((finding) => !finding.counts)).toBe(true);
    const unnamed = await house.done(house.examiner, 'runs.record', run({ instrumentId: null }));
    expect(unnamed.instrumentState).toBe('no-instrument');
  });

  test.each<[string, () => Input<'runs.record'>, string]>([
    ['a caution not acknowledged', () => run({ cautions: [] }), 'refused'],
    ['a magnet on a mounted stone', () => byEye({ method: 'magnet', response: 'none' }, { stoneId: taken.stones['B-1']!, cautions: [] }), 'refused'],
    ['absorption through a closed back', () => run({ method: 'absorption', instrumentId: null, stoneId: taken.stones['B-1']!, cautions: ['ultraviolet'] }), 'refused'],
    ['an observation of another method', () => byEye({ method: 'magnet', response: 'none' }, { method: 'thermal-probe', cautions: [] }), 'invalid-input'],
    ['nothing at all', () => run({ files: [] }), 'invalid-input'],
    ['an instrument for other methods', () => run({ method: 'infrared', cautions: [] }), 'invalid-input'],
    ['an unknown stone', () => run({ stoneId: 'nowhere' }), 'not-found'],
    ['an unknown instrument', () => run({ instrumentId: 'nowhere' }), 'not-found'],
  ])('refuses %s and writes nothing', async (_name, input, code) => {
    const before = house.casebook.handle.read.get('SELECT count(*) AS n, max(hash) FROM audit_entry');
    const answer = await house.as(house.examiner, 'runs.record', input());
    expect(answer.ok ? null : answer.error.code).toBe(code);
    expect(answer.ok ? '' : answer.error.next).not.toBe('');
    expect(house.casebook.handle.read.get('SELECT count(*) AS n, max(hash) FROM audit_entry')).toEqual(before);
  });

  test('a stone that went back to the client can’t be tested', async () => {
    const returned = await house.casebook.custody.append({ at: house.now(), personId: house.examiner, operation: 'custody.append' }, { itemId: taken.items['A']!, event: 'returned', to: 'the client', weight: 4120 });
    expect(returned.ok).toBe(true);
    const answer = await house.as(house.examiner, 'runs.record', run());
    expect(answer.ok ? null : answer.error.message).toContain('returned to the client');
  });

  test('long-wave light after short-wave is kept with a warning', async () => {
    await house.done(house.examiner, 'runs.record', byEye({ method: 'fluorescence-short-wave', colour: 'orange', strength: 'moderate' }));
    house.pass(3);
    const late = await house.done(house.examiner, 'runs.record', byEye({ method: 'fluorescence-long-wave', colour: 'none', strength: 'inert' }));
    expect(late.warnings?.[0]).toMatchObject({ code: 'short-wave-first' });
    expect(late.warnings?.[0]?.message).toContain('3 min before (R1)');
    expect(late.reads).toBe('inert, seen after short-wave light');
  });

  test('files beside an observation are kept unread', async () => {
    const picture = { name: 'pattern.png', bytes: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2, 3) };
    const recorded = await house.done(house.examiner, 'runs.record', byEye({ method: 'growth-pattern', pattern: 'striations' }, { files: [picture] }));
    expect(recorded.files[0]).toMatchObject({ name: 'pattern.png', outcome: 'read', error: null });
    expect(recorded.spectra).toEqual([]);
  });
});

describe('analysing again', () => {
  const folder = () => house.done(house.examiner, 'stones.folder', { stoneId: taken.stones['A-1']! });

  test('the older analysis stays; proposals are replaced, decisions are kept', async () => {
    const recorded = await house.done(house.examiner, 'runs.record', run());
    const spectrum = recorded.spectra[0]!;
    const before = (await folder()).findings;
    const decided = before[0]!;
    await house.done(house.examiner, 'findings.decide', { findingId: decided.id, accept: true, reason: '' });
    house.pass(1);
    const parameters = spectrum.analysis!.result.parameters;
    const again = await house.done(house.examiner, 'runs.analyse', { spectrumId: spectrum.id, parameters });
    expect(again.analysis?.id).not.toBe(spectrum.analysis?.id);
    expect(again.analysis?.result).toEqual(spectrum.analysis?.result);
    expect(house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM analysis')?.n).toBe(2);
    const after = (await folder()).findings;
    expect(after.find((finding) => finding.id === decided.id)).toMatchObject({ state: 'accepted' });
    expect(after.find((finding) => finding.id === decided.id)?.remark).toBeUndefined();
    expect(after.filter((finding) => finding.state === 'replaced')).toHaveLength(before.length - 1);
    expect(after.filter((finding) => finding.state === 'proposed').map((finding) => finding.statement)).toEqual(before.slice(1).map((finding) => finding.statement));
  });

  test('a decision that the newest analysis no longer bears out is remarked', async () => {
    const recorded = await house.done(house.examiner, 'runs.record', run());
    const spectrum = recorded.spectra[0]!;
    const diamond = (await folder()).findings.find((finding) => finding.supports === 'diamond')!;
    await house.done(house.examiner, 'findings.decide', { findingId: diamond.id, accept: true, reason: '' });
    await house.done(house.examiner, 'runs.analyse', { spectrumId: spectrum.id, parameters: { ...spectrum.analysis!.result.parameters, laserNm: 514 } });
    expect((await folder()).findings.find((finding) => finding.id === diamond.id)).toMatchObject({ state: 'accepted', remark: expect.stringContaining('no longer') as string });
    const replaced = (await folder()).findings.find((finding) => finding.state === 'replaced');
    if (replaced) {
      const answer = await house.as(house.examiner, 'findings.decide', { findingId: replaced.id, accept: true, reason: '' });
      expect(answer.ok ? null : answer.error.code).toBe('conflict');
    }
  });

  test('another method than the run’s, or an unknown curve, is refused', async () => {
    const recorded = await house.done(house.examiner, 'runs.record', run());
    const other = await house.as(house.examiner, 'runs.analyse', { spectrumId: recorded.spectra[0]!.id, parameters: { method: 'infrared' } });
    expect(other.ok ? null : other.error.code).toBe('invalid-input');
    const unknown = await house.as(house.examiner, 'runs.analyse', { spectrumId: 'nowhere', parameters: { method: 'raman' } });
    expect(unknown.ok ? null : unknown.error.code).toBe('not-found');
  });
});
