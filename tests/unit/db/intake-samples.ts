import type { IntakeInput } from '../../../app/contract/cases.ts';

type Item = IntakeInput['parcels'][number]['items'][number];

export const looseItem = (change: Partial<Item> = {}): Item => ({
  kind: 'loose', declared: 'round brilliant, said to be natural', declaredValue: '', grossWeight: 10_234, weightUnit: 'ct', count: null, setting: null, condition: '',
  stones: [{ position: '', shape: 'round', measurements: '', colourClass: 'colourless', weight: 10_234 }], photographs: [], ...change,
});

export const ringItem = (change: Partial<Item> = {}): Item => ({
  kind: 'jewellery', declared: 'ring with three stones', declaredValue: '2000', grossWeight: 512_345, weightUnit: 'g', count: null, setting: 'open-back', condition: 'worn shank',
  stones: ['centre', 'left', 'right'].map((position) => ({ position, shape: 'round', measurements: '', colourClass: 'colourless' as const, weight: null })), photographs: [], ...change,
});

export const lotItem = (change: Partial<Item> = {}): Item => ({
  kind: 'lot', declared: 'melee', declaredValue: '', grossWeight: 34_000, weightUnit: 'ct', count: 340, setting: null, condition: '', stones: [], photographs: [], ...change,
});

export function intake(items: Item[] = [looseItem()], change: Partial<IntakeInput> = {}): IntakeInput {
  return {
    client: { name: 'Invented Client', address: '', email: '', phone: '', note: '' }, asks: 'natural or laboratory-grown?', dueOn: null, remarks: '', place: 'safe 2', broughtBy: '',
    parcels: [{ sealNumber: '', remarks: '', items }], ...change,
  };
}
