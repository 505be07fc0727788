import { afterEach, beforeEach, expect, test } from 'vitest';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import type { Observation } from '../../../../app/domain/observation.ts';
import { rederive } from '../../../../app/evidence/rederive.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import { emissionInstrument } from '../../../../app/spectra/simulate/instrument.ts';
import { INFRARED_DEFAULTS, simulateInfrared } from '../../../../app/spectra/simulate/infrared.ts';
import { simulatePhotoluminescence } from '../../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone } from '../../../../app/spectra/simulate/stone.ts';
import { INTAKE, jcampOf, openHouse, type House } from './work-house.ts';


let house: House;
let caseId: string;
let stoneId: string;
let instrumentId: string;
const made = simulatedStone('natural-ia', 3);
const files = {
  photoluminescence: jcampOf('A-1', simulatePhotoluminescence(made, emissionInstrument(), 3), 'NANOMETERS'), infrared: jcampOf('A-1', simulateInfrared(made, INFRARED_DEFAULTS, 3), '1/CM', 'INFRARED SPECTRUM'),
};

beforeEach(async () => {
  house = await openHouse();
  const taken = await house.takeIn({ parcels: [{ ...INTAKE.parcels[0]!, items: [INTAKE.parcels[0]!.items[0]!] }] });
  caseId = taken.caseId;
  stoneId = taken.stones['A-1']!;
  instrumentId = (await house.done(house.examiner, 'instruments.save', { id: null, name: 'Bench instrument', methods: ['photoluminescence', 'infrared', 'raman'], serial: '', place: '', remembers: {}, checkEveryDays: 7, active: true })).id;
  await house.done(house.examiner, 'instruments.recordCheck', { instrumentId, passed: true, reference: 'reference diamond', outcome: 'in place' });
});
afterEach(() => house.close());

const folder = () => house.done(house.examiner, 'stones.folder', { stoneId });
const common = { temperatureK: null, integrationMs: null, resolution: null, note: '' };
const curve = (method: keyof typeof files) => house.done(house.examiner, 'runs.record', {
  ...common, stoneId, instrumentId, method, laserNm: method === 'infrared' ? null : 532, cautions: method === 'infrared' ? [] : ['laser'], observation: null, files: [{ name: `${method}.jdx`, bytes: files[method] }],
});
const seen = (observation: Observation) => house.done(house.examiner, 'runs.record', { ...common, stoneId, instrumentId: null, method: observation.method, laserNm: null, cautions: ['ultraviolet'], observation, files: [] });
async function acceptAll(): Promise<void> {
  for (const finding of (await folder()).findings.filter((entry) => entry.state === 'proposed')) await house.done(house.examiner, 'findings.decide', { findingId: finding.id, accept: true, reason: '' });
}
async function concluded() {
  await curve('photoluminescence');
  await curve('infrared');
  await acceptAll();
  house.pass(1);
  return house.done(house.examiner, 'conclusions.conclude', { stoneId, conclusion: 'natural', reasons: 'Characteristics are consistent with natural growth.', departure: '' });
}

test('a stored conclusion holds versions, chain and basis, and can be made again after later tests changed the stone', async () => {
  const conclusion = await concluded();
  expect(conclusion.proposal).toMatchObject({ rules: expect.stringMatching(/^rules/), table: expect.stringMatching(/^evidence table/), rule: 'two-strong' });
  expect(conclusion.proposal.chain!.filter((link) => link.role === 'decides').map((link) => link.row).length).toBe(2);
  await seen({ method: 'growth-pattern', pattern: 'striations' });
  const { conclusions, proposal } = await folder();
  expect(proposal.conclusion).toBe('undetermined');
  expect(rederive(conclusions[0]!.proposal)).toEqual({ state: 'same' });
});

test('the protocol of a loose stone: what is done, what comes next; the house may change it', async () => {
  expect((await folder()).protocol).toMatchObject({ name: 'loose colourless', next: 'raman' });
  await curve('photoluminescence');
  expect((await folder()).protocol!.steps.find((step) => step.method === 'photoluminescence')!.state).toBe('done');
  const settings = houseSettings.parse({});
  settings.protocols[0] = { purpose: 'loose', name: 'short', steps: [{ method: 'photoluminescence', maySkip: false }, { method: 'infrared', maySkip: false }, { method: 'magnet', maySkip: true }] };
  await house.casebook.laboratory.save({ at: house.now(), personId: house.examiner, operation: 'laboratory.save' }, { name: 'Invented Laboratory', address: '2 Nowhere Lane', zone: 'Europe/Berlin', logo: null, settings });
  const { protocol, proposal } = await folder();
  expect(protocol).toMatchObject({ name: 'short', next: 'infrared', asks: ['photoluminescence', 'infrared'] });
  expect(proposal.missing.join(' ')).toContain('The protocol “short” asks for infrared: not done.');
});

test('the report lists what the protocol asked for and was not done', async () => {
  const conclusion = await concluded();
  house.pass(1);
  await house.done(house.colleague, 'conclusions.confirm', { conclusionId: conclusion.id, agrees: true, reason: '' });
  const { model } = await house.done(house.examiner, 'reports.prepare', { caseId });
  const { notDone } = sectionOf(model, 'results')!.stones[0]!;
  expect(notDone).toContain('Microscopy: asked for by the protocol “loose colourless”, not done');
  expect(notDone).toContain('Raman');
  expect(notDone).toContain('Growth pattern, deep ultraviolet');
  expect(notDone.some((line) => line.startsWith('Infrared'))).toBe(false);
});

test('a disagreement is kept, printed as undetermined, and sends the stone to further testing', async () => {
  const conclusion = await concluded();
  expect((await folder()).proposal.nextTests).toEqual([]);
  house.pass(1);
  const refused = await house.as(house.colleague, 'conclusions.confirm', { conclusionId: conclusion.id, agrees: false, reason: ' ' });
  expect(refused.ok).toBe(false);
  await house.done(house.colleague, 'conclusions.confirm', { conclusionId: conclusion.id, agrees: false, reason: 'The growth pattern was not looked at.', outcome: 'undetermined' });
  const { proposal, conclusions, stone } = await folder();
  expect(stone.stage).toBe('disagreed');
  expect(conclusions[0]!.confirmation).toMatchObject({ agrees: false, reason: 'The growth pattern was not looked at.', outcome: 'undetermined', readFirst: false });
  expect(proposal.missing[0]).toContain('Two persons disagree');
  expect(proposal.nextTests[0]!.why).toContain('a further witness');
  const { model } = await house.done(house.examiner, 'reports.prepare', { caseId });
  expect(sectionOf(model, 'opinions')!.stones[0]!.conclusion!.id).toBe('undetermined');
});

test('short-wave light minutes before long-wave is warned of in the run', async () => {
  await seen({ method: 'fluorescence-short-wave', colour: 'blue', strength: 'weak' });
  house.pass(3);
  const run = await seen({ method: 'fluorescence-long-wave', colour: 'blue', strength: 'weak' });
  expect(run.warnings).toMatchObject([{ code: 'short-wave-first' }]);
});
