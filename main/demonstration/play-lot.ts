import { drawSample } from '../../app/lots/draw-sample.ts';
import type { ScenarioStep } from './scenario-schema.ts';
import { under, type Stage, type StagedCase } from './stage.ts';

type Step<D extends ScenarioStep['do']> = Extract<ScenarioStep, { do: D }>;
type Context = { readonly stage: Stage; readonly staged: StagedCase; readonly target: string };

const itemOf = ({ staged, target }: Context): string => under(staged.items, target, 'item').id;

export async function planLot({ by, plan }: Step<'plan-lot'>, context: Context): Promise<void> {
  await context.stage.ask(by, 'lots.plan', { itemId: itemOf(context), ...plan });
}

/** The stones of the drawn list, in order: natural unless the scenario says otherwise for the n-th of them. */
export async function testLot({ by, others, from, to }: Step<'test-lot'>, context: Context): Promise<void> {
  const itemId = itemOf(context);
  const { plan } = await context.stage.ask(by, 'lots.get', { itemId });
  if (plan === null || plan.content.seed === null) throw new Error(`demonstration: ${context.target} has no drawn list`);
  const list = drawSample(plan.content.lot, plan.content.size, plan.content.seed).slice(from - 1, to);
  await context.stage.ask(by, 'lots.enter', {
    itemId, source: 'keyed', note: '', entries: list.map((number, i) => ({ number, outcome: others[String(from + i)] ?? 'natural', was: null })),
  });
}

export async function countLot({ by, count }: Step<'count-lot'>, context: Context): Promise<void> {
  await context.stage.ask(by, 'lots.count', { itemId: itemOf(context), ...count });
}

export async function splitLot({ by, split }: Step<'split-lot'>, context: Context): Promise<void> {
  await context.stage.ask(by, 'lots.split', { itemId: itemOf(context), ...split });
}

export async function estimateWeights({ by, measures }: Step<'estimate-weight'>, { stage, staged, target }: Context): Promise<void> {
  await stage.ask(by, 'weights.estimate', { stoneId: under(staged.stones, target, 'stone').id, measures });
}

export async function declareWeight({ by, weight, note }: Step<'declare-weight'>, context: Context): Promise<void> {
  await context.stage.ask(by, 'weights.declare', { itemId: itemOf(context), weight, note });
}
