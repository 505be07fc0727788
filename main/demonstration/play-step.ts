import { hazardsOf } from '../../app/runs/hazards-of.ts';
import { METHODS } from '../../app/domain/method.ts';
import { examinersWords } from './examiners-words.ts';
import { marksOfPiece } from './marks-of-piece.ts';
import { observationOf } from './observation-of.ts';
import { countLot, declareWeight, estimateWeights, planLot, splitLot, testLot } from './play-lot.ts';
import type { ScenarioStep } from './scenario-schema.ts';
import { seedOf } from './seed-of.ts';
import { simulateCurve } from './simulate-curve.ts';
import { under, type Stage, type StagedCase } from './stage.ts';
import { takePhotograph } from './take-photograph.ts';
import { writeInstrumentFile } from './write-instrument-file.ts';

type Step<D extends ScenarioStep['do']> = Extract<ScenarioStep, { do: D }>;
type Context = { readonly stage: Stage; readonly staged: StagedCase; readonly caseKey: string; readonly target: string };

const NO_SETTINGS = { laserNm: null, temperatureK: null, integrationMs: null, resolution: null } as const;
const NO_OBSERVATION = { observation: null } as const;

async function measure(step: Step<'measure'>, { stage, staged, caseKey, target }: Context): Promise<void> {
  const { id, stone } = under(staged.stones, target, 'stone');
  const setup = stage.scenario.setups[step.setup];
  if (setup === undefined) throw new Error(`demonstration: there is no setup “${step.setup}”`);
  const instrument = stage.scenario.instruments.find((one) => one.key === setup.instrument)?.name ?? '';
  const format = step.format ?? setup.format;
  const curve = simulateCurve(stone, setup, seedOf(caseKey, target, step.setup, String(step.day)));
  const file = writeInstrumentFile(curve, { method: setup.method, format }, {
    stem: `${staged.number}_${target}_${step.setup}`, title: `SIMULATED ${staged.number} ${target} ${METHODS[setup.method].name.toLowerCase()}`, instrument, marking: stage.scenario.marking,
  });
  await stage.ask(step.by, 'runs.record', {
    stoneId: id, method: setup.method, instrumentId: under(stage.instruments, setup.instrument, 'instrument'),
    laserNm: setup.laserNm ?? null, temperatureK: setup.temperatureK ?? null, integrationMs: setup.integrationMs ?? null, resolution: setup.resolution ?? null,
    cautions: hazardsOf(setup.method, setup.temperatureK ?? null), files: [{ ...file, ...(step.xUnit === undefined ? {} : { xUnit: step.xUnit }) }], ...NO_OBSERVATION, note: step.note,
  });
}

async function observe(step: Step<'observe'>, { stage, staged, target }: Context): Promise<void> {
  const { id, stone } = under(staged.stones, target, 'stone');
  const observation = observationOf(stage.scenario, stone, step.method);
  if (observation === null) throw new Error(`demonstration: nothing is said of ${step.method} on ${stone.is} (${target})`);
  await stage.ask(step.by, 'runs.record', {
    stoneId: id, method: step.method, instrumentId: step.instrument === null ? null : under(stage.instruments, step.instrument, 'instrument'),
    ...NO_SETTINGS, cautions: hazardsOf(step.method, null), files: [], observation, note: step.note,
  });
}

async function custody(step: Step<'custody'>, { stage, staged, target }: Context): Promise<void> {
  const { event, from, to, outside, purpose, dueBack, place, seal, weight, note } = step;
  const { id, item } = under(staged.items, target, 'item');
  if (weight !== undefined && item.gross !== null && weight.unit !== item.gross.unit) throw new Error(`demonstration: ${target} was weighed in another unit`);
  await stage.ask(step.by, 'custody.append', { itemId: id, event, from, to, outside, purpose, dueBack: dueBack === undefined ? undefined : stage.due(dueBack), place, seal, weight: weight?.steps, note });
}

async function photograph(step: Step<'photograph'>, { stage, staged, caseKey, target }: Context): Promise<void> {
  const { id, item } = under(staged.items, target, 'item');
  const shot = takePhotograph(stage.scenario, item, target, step, seedOf(caseKey, target, step.light, String(step.day)));
  await stage.ask(step.by, 'photographs.add', { ...shot, caseId: staged.id, itemId: id, stoneId: null });
}

async function map(step: Step<'map'>, { stage, staged, target }: Context): Promise<void> {
  const { id, item } = under(staged.items, target, 'item');
  const piece = await stage.ask(step.by, 'pieces.get', { itemId: id });
  const photograph = piece.item.photographs.find((one) => one.light === step.light);
  if (photograph === undefined) throw new Error(`demonstration: ${target} has no photograph in ${step.light} light for its map`);
  await stage.ask(step.by, 'pieces.saveMap', {
    mapId: null, itemId: id, onVersion: 0, name: step.name, ground: { kind: 'photograph', photographId: photograph.id },
    marks: marksOfPiece(item.arrangement, piece.item.stones.map((stone) => stone.id)),
  });
}

async function comparePair(step: Step<'compare-pair'>, { stage, staged, target }: Context): Promise<void> {
  const { id } = under(staged.items, target, 'item');
  const piece = await stage.ask(step.by, 'pieces.get', { itemId: id });
  const newest = (light: 'long-wave' | 'short-wave'): string => {
    const photograph = piece.item.photographs.findLast((one) => one.light === light);
    if (photograph === undefined) throw new Error(`demonstration: ${target} has no ${light} photograph to compare`);
    return photograph.id;
  };
  await stage.ask(step.by, 'images.comparePair', { itemId: id, longWaveId: newest('long-wave'), shortWaveId: newest('short-wave'), mapId: piece.maps[0]?.id ?? null, stops: step.stops });
}

async function proposedFindings({ stage, staged, target }: Context, by: string) {
  const folder = await stage.ask(by, 'stones.folder', { stoneId: under(staged.stones, target, 'stone').id });
  return { folder, proposed: folder.findings.filter((finding) => finding.state === 'proposed') };
}

async function setAside(step: Step<'set-aside'>, context: Context): Promise<void> {
  const { proposed } = await proposedFindings(context, step.by);
  const chosen = proposed.filter((finding) => finding.code.startsWith(step.code));
  if (chosen.length === 0) throw new Error(`demonstration: ${context.target} has no finding “${step.code}” to set aside`);
  for (const finding of chosen) await context.stage.ask(step.by, 'findings.decide', { findingId: finding.id, accept: false, reason: step.reason });
}

async function accept(step: Step<'accept'>, context: Context): Promise<void> {
  const { proposed } = await proposedFindings(context, step.by);
  for (const finding of proposed) await context.stage.ask(step.by, 'findings.decide', { findingId: finding.id, accept: true, reason: '' });
}

async function addFinding(step: Step<'add-finding'>, { stage, staged, target }: Context): Promise<void> {
  const { method, statement, strength, supports, caution } = step;
  await stage.ask(step.by, 'findings.add', { stoneId: under(staged.stones, target, 'stone').id, method, statement, strength, supports, caution });
}

async function conclude(step: Step<'conclude'>, context: Context): Promise<void> {
  const { folder } = await proposedFindings(context, step.by);
  const { proposal } = folder;
  await context.stage.ask(step.by, 'conclusions.conclude', {
    stoneId: folder.stone.id, conclusion: step.conclusion ?? proposal.conclusion, reasons: examinersWords(proposal), departure: step.departure,
  });
}

async function confirm(step: Step<'confirm'>, context: Context): Promise<void> {
  const { folder } = await proposedFindings(context, step.by);
  const newest = folder.conclusions.at(-1);
  if (newest === undefined) throw new Error(`demonstration: ${context.target} has no conclusion to confirm`);
  await context.stage.ask(step.by, 'conclusions.confirm', { conclusionId: newest.id, agrees: step.agrees, reason: step.reason });
}

/** Does one step of a case to one of its targets, through the services. Throws where anything is refused: then the scenario is wrong. */
export async function playStep(step: ScenarioStep, context: Context): Promise<void> {
  switch (step.do) {
    case 'custody': return custody(step, context);
    case 'measure': return measure(step, context);
    case 'observe': return observe(step, context);
    case 'photograph': return photograph(step, context);
    case 'map': return map(step, context);
    case 'compare-pair': return comparePair(step, context);
    case 'set-aside': return setAside(step, context);
    case 'accept': return accept(step, context);
    case 'add-finding': return addFinding(step, context);
    case 'conclude': return conclude(step, context);
    case 'confirm': return confirm(step, context);
    case 'count-lot': return countLot(step, context);
    case 'plan-lot': return planLot(step, context);
    case 'test-lot': return testLot(step, context);
    case 'split-lot': return splitLot(step, context);
    case 'estimate-weight': return estimateWeights(step, context);
    case 'declare-weight': return declareWeight(step, context);
    case 'issue': await context.stage.ask(step.by, 'reports.issue', { caseId: context.staged.id });
  }
}
