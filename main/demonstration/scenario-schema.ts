import { z } from 'zod';
import { colourClass } from '../../app/domain/colour-class.ts';
import { truth } from '../../app/contract/figures.ts';
import { checkNumber } from '../../app/contract/work.ts';
import { conclusionId } from '../../app/domain/conclusion.ts';
import { writtenEvent } from '../../app/domain/custody-event.ts';
import { strength, supports } from '../../app/domain/finding.ts';
import { methodId } from '../../app/domain/method.ts';
import { observation } from '../../app/domain/observation.ts';
import { role } from '../../app/domain/role.ts';
import { parseCarat, parseGram } from '../../app/domain/weight.ts';
import { lotOutcome } from '../../app/lots/lot-outcome.ts';
import { countContent, planInput, splitContent } from '../../app/lots/lot-record.ts';
import { ANALYSABLE } from '../../app/spectra/analysis.ts';
import { STONE_KINDS } from '../../app/spectra/simulate/stone.ts';
import { STATABLE_X_UNITS } from '../../app/spectra/spectrum.ts';
import { weightMeasures } from '../../app/weights/estimate-weight.ts';
import { itemKind, lightKind, settingKind } from '../../app/contract/cases.ts';

/** Working days before today, Monday to Friday; −1 is the last one that is over. Nothing happens today, so nothing lies ahead of the clock. */
const day = z.number().int().min(-400).max(-1);
/** Time of day in the laboratory's zone. */
const time = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);
const key = z.string().min(1).max(40);

/** What is to be seen of a stone by each method, without repeating the method in every entry. */
const seen = z.record(z.string(), z.record(z.string(), z.unknown())).transform((entries, ctx) => Object.entries(entries).map(([method, content]) => {
  const parsed = observation.safeParse({ method, ...content });
  if (!parsed.success) ctx.addIssue({ code: 'custom', message: `${method}: ${parsed.error.message}` });
  return parsed.data!;
}));

const carat = z.string().transform((text, ctx) => {
  const weight = parseCarat(text);
  if (weight.ok) return weight.value as number;
  ctx.addIssue({ code: 'custom', message: weight.error });
  return z.NEVER;
});

/** "1.02 ct" or "5.31 g" as whole steps of its unit. */
const grossWeight = z.string().regex(/ (ct|g)$/).transform((text, ctx) => {
  const unit = text.endsWith(' ct') ? 'ct' as const : 'g' as const;
  const weight = unit === 'ct' ? parseCarat(text) : parseGram(text);
  if (weight.ok) return { steps: weight.value as number, unit };
  ctx.addIssue({ code: 'custom', message: weight.error });
  return z.NEVER;
});

const stone = z.strictObject({
  /** What the simulator makes of it. The casebook never learns this: it is what the examiners are to find out. */
  is: z.enum(STONE_KINDS), seed: z.number().int(),
  position: z.string().default(''), shape: z.string(), measurements: z.string().default(''), colourClass: colourClass.default('colourless'),
  weight: carat.nullable().default(null),
  /** Where this stone looks unlike others of its kind. */
  sees: seen.default([]),
});

const photograph = z.strictObject({ light: lightKind.exclude(['drawing']), caption: z.string() });

/** How the stones lie in the pictures. */
export const ARRANGEMENTS = ['single', 'row', 'arc', 'rings', 'scatter'] as const;

const item = z.strictObject({
  kind: itemKind, declared: z.string(), declaredValue: z.string().default(''), gross: grossWeight.nullable(), count: z.number().int().nullable().default(null),
  setting: settingKind.nullable().default(null), condition: z.string().default(''), stones: z.array(stone), arrangement: z.enum(ARRANGEMENTS),
  photographs: z.array(photograph).default([]),
});

/** How an instrument of the house is set, and the form its files have. */
const setup = z.strictObject({
  method: z.enum(ANALYSABLE), instrument: key,
  laserNm: z.number().optional(), temperatureK: z.number().optional(), integrationMs: z.number().optional(), resolution: z.number().optional(),
  from: z.number(), to: z.number(), points: z.number().int(),
  format: z.enum(['jcamp', 'tabs-decimal-comma', 'semicolons', 'angstrom-bare', 'damaged']),
});

/** Labels of stones as the casebook gives them; "A-1..A-6" stands for six. */
const stones = z.array(z.string().regex(/^[A-Z]+-\d+(\.\.[A-Z]+-\d+)?$/)).min(1);
const common = {
  day, at: time, by: key,
  /** Minutes between one stone and the next. */
  every: z.number().min(0).max(240).default(6),
};

const step = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('custody'), ...common, items: z.array(z.string()).min(1), event: writtenEvent,
    from: z.string().optional(), to: z.string().optional(), outside: z.boolean().optional(), purpose: z.string().optional(),
    /** Working days from today. */
    dueBack: z.number().int().optional(),
    place: z.string().optional(), seal: z.string().optional(), weight: grossWeight.optional(), note: z.string().optional(),
  }),
  z.strictObject({ do: z.literal('measure'), ...common, setup: key, stones, format: setup.shape.format.optional(), xUnit: z.enum(STATABLE_X_UNITS).optional(), note: z.string().default('') }),
  z.strictObject({ do: z.literal('observe'), ...common, method: methodId, stones, instrument: key.nullable().default(null), note: z.string().default('') }),
  z.strictObject({ do: z.literal('photograph'), ...common, item: z.string(), ...photograph.shape }),
  /** A mark on every stone of the item, on its first photograph in a light; the pictures are drawn, so it is known where they lie. */
  z.strictObject({ do: z.literal('map'), ...common, item: z.string(), name: z.string(), light: lightKind.exclude(['drawing']).default('white') }),
  /** The item's first map and its newest photographs of either lamp; `stops`: how much more the short-wave one was exposed. */
  z.strictObject({ do: z.literal('compare-pair'), ...common, item: z.string(), stops: z.number() }),
  z.strictObject({ do: z.literal('set-aside'), ...common, stones, code: z.string(), reason: z.string() }),
  z.strictObject({ do: z.literal('accept'), ...common, stones }),
  z.strictObject({ do: z.literal('add-finding'), ...common, stones, method: methodId, statement: z.string(), strength, supports, caution: z.string().default('') }),
  /** Without a conclusion: the one that the rules propose. */
  z.strictObject({ do: z.literal('conclude'), ...common, stones, conclusion: conclusionId.optional(), departure: z.string().default('') }),
  z.strictObject({ do: z.literal('confirm'), ...common, stones, agrees: z.boolean().default(true), reason: z.string().default('') }),
  z.strictObject({ do: z.literal('count-lot'), ...common, item: z.string(), count: countContent.omit({ kind: true }) }),
  z.strictObject({ do: z.literal('plan-lot'), ...common, item: z.string(), plan: planInput }),
  /** The from-th to the to-th stone of the drawn list; `others` by their place in it, the rest is natural. */
  z.strictObject({ do: z.literal('test-lot'), ...common, item: z.string(), from: z.number().int().min(1), to: z.number().int().min(1), others: z.record(z.string(), lotOutcome).default({}) }),
  z.strictObject({ do: z.literal('split-lot'), ...common, item: z.string(), split: splitContent.omit({ kind: true }) }),
  z.strictObject({ do: z.literal('estimate-weight'), ...common, stones, measures: weightMeasures }),
  z.strictObject({ do: z.literal('declare-weight'), ...common, item: z.string(), weight: carat, note: z.string() }),
  z.strictObject({ do: z.literal('issue'), ...common }),
]);

const caseOf = z.strictObject({
  key, client: key, asks: z.string(), remarks: z.string().default(''), place: z.string(), broughtBy: z.string().default(''),
  received: z.strictObject({ day, at: time, by: key }),
  /** Working days from today, 0 is today; negative lies behind. */
  dueIn: z.number().int().nullable(),
  parcels: z.array(z.strictObject({ sealNumber: z.string().default(''), remarks: z.string().default(''), items: z.array(item).min(1) })).min(1),
  steps: z.array(step),
});

/** The invented laboratory and everything that happened in it, with days relative to the day it is built. */
export const scenarioSchema = z.strictObject({
  marking: z.string().min(1),
  laboratory: z.strictObject({ name: z.string(), address: z.string(), zone: z.string(), opened: z.strictObject({ day, at: time }) }),
  /** The first one sets up the casebook and is a manager. */
  people: z.array(z.strictObject({ key, name: z.string(), initials: z.string(), roles: z.array(role).min(1) })).min(1),
  instruments: z.array(z.strictObject({
    key, name: z.string(), methods: z.array(methodId).min(1), serial: z.string(), place: z.string(), checkEveryDays: z.number().int(),
    checks: z.array(z.strictObject({ day, at: time, by: key, passed: z.boolean().default(true), reference: z.string(), outcome: z.string(), measured: checkNumber.nullable().default(null) })),
  })),
  /** Samples of known origin, and what the laboratory said of them without a stone in a case; the manager enters them. */
  knownSamples: z.array(z.strictObject({ key, day, at: time, label: z.string(), truth, basis: z.string() })).default([]),
  trials: z.array(z.strictObject({ day, at: time, sample: key, outcome: conclusionId, examiner: key, instruments: z.array(key).min(1), blind: z.boolean().default(true), remark: z.string().default('') })).default([]),
  setups: z.record(z.string(), setup),
  /** What stones of a kind show to the eye. */
  appearance: z.partialRecord(z.enum(STONE_KINDS), seen),
  clients: z.array(z.strictObject({ key, name: z.string(), address: z.string(), email: z.string().default(''), phone: z.string().default(''), note: z.string().default('') })),
  cases: z.array(caseOf),
});

export type Scenario = z.output<typeof scenarioSchema>;
export type ScenarioCase = Scenario['cases'][number];
export type ScenarioItem = ScenarioCase['parcels'][number]['items'][number];
export type ScenarioStone = ScenarioItem['stones'][number];
export type ScenarioStep = ScenarioCase['steps'][number];
export type Setup = Scenario['setups'][string];
export type Arrangement = (typeof ARRANGEMENTS)[number];
