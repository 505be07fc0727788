import type { Input } from '../../app/contract/index.ts';
import { itemLabel, stoneLabel } from '../../app/custody/item-label.ts';
import type { ScenarioCase, ScenarioItem } from './scenario-schema.ts';
import { seedOf } from './seed-of.ts';
import { under, type Stage, type StagedCase } from './stage.ts';
import { takePhotograph } from './take-photograph.ts';

type IntakeItem = Input<'cases.takeIn'>['parcels'][number]['items'][number];

/** The items of a case with the labels that the casebook will give them. */
function labelled(one: ScenarioCase): { readonly label: string; readonly item: ScenarioItem }[] {
  return one.parcels.flatMap((parcel) => parcel.items).map((item, index) => ({ label: itemLabel(index), item }));
}

function intakeItem(stage: Stage, one: ScenarioCase, label: string, item: ScenarioItem): IntakeItem {
  const { kind, declared, declaredValue, count, setting, condition } = item;
  return {
    kind, declared, declaredValue, count, setting, condition, grossWeight: item.gross?.steps ?? null, weightUnit: item.gross?.unit ?? 'ct',
    stones: item.stones.map(({ position, shape, measurements, colourClass, weight }) => ({ position, shape, measurements, colourClass, weight })),
    photographs: item.photographs.map((shot) => takePhotograph(stage.scenario, item, label, shot, seedOf(one.key, label, shot.light))),
  };
}

/** Takes a case in and remembers the ids of its items and stones. */
export async function playIntake(stage: Stage, one: ScenarioCase, dueOn: string | null): Promise<void> {
  const { asks, remarks, place, broughtBy } = one;
  let next = 0;
  const parcels = one.parcels.map(({ sealNumber, remarks: parcelRemarks, items }) => ({
    sealNumber, remarks: parcelRemarks, items: items.map((item) => intakeItem(stage, one, itemLabel(next++), item)),
  }));
  const client = { existing: under(stage.clients, one.client, 'client') };
  const taken = await stage.ask(one.received.by, 'cases.takeIn', { client, asks, dueOn, remarks, place, broughtBy, parcels });
  const view = await stage.ask(one.received.by, 'cases.get', { caseId: taken.caseId });
  const made = view.parcels.flatMap((parcel) => parcel.items);
  const staged: StagedCase = {
    id: taken.caseId, number: taken.number,
    items: new Map(labelled(one).map(({ label, item }, index) => [label, { id: made[index]!.id, item }])),
    stones: new Map(labelled(one).flatMap(({ label, item }, index) => item.stones.map((stone, s) => [stoneLabel(label, s + 1), { id: made[index]!.stones[s]!.id, stone }]))),
  };
  stage.cases.set(one.key, staged);
}
