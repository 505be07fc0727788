import { describe, expect, test } from 'vitest';
import { checkIntake } from '../../../../app/custody/check-intake.ts';
import { intake, looseItem, lotItem, ringItem } from '../../db/made-casebook.ts';

const TODAY = '2026-03-02';
const PATH = 'parcels.0.items.0';
const fieldsOf = (...args: Parameters<typeof intake>): string[] => Object.keys(checkIntake(intake(...args), TODAY)).sort();
const stone = { position: '', shape: '', measurements: '', colourClass: 'unknown' as const, weight: null };

describe('checkIntake', () => {
  test('a sound hand-over has no sentences', () => {
    expect(checkIntake(intake([looseItem(), ringItem(), lotItem()], { dueOn: TODAY }), TODAY)).toEqual({});
  });
  test.each([
    ['a loose stone in a setting', looseItem({ setting: 'open-back' }), ['setting']],
    ['two stones as one loose item', looseItem({ stones: [stone, stone] }), ['stones']],
    ['a loose stone counted as three', looseItem({ count: 3 }), ['count']],
    ['a lot that was not counted', lotItem({ count: null }), ['count']],
    ['a lot with more stones than it holds', lotItem({ count: 1, stones: [stone, stone] }), ['stones']],
    ['jewellery without its back', ringItem({ setting: null }), ['setting']],
    ['jewellery without stones', ringItem({ stones: [] }), ['stones']],
    ['jewellery stones that can’t be told apart', ringItem({ stones: [stone, { ...stone, position: 'left' }] }), ['stones.0.position']],
    ['a mounted stone with a weight', ringItem({ stones: [{ ...stone, weight: 100 }] }), ['stones.0.weight']],
    ['stones heavier than the item', looseItem({ grossWeight: 10_000, stones: [{ ...stone, weight: 10_500 }] }), ['grossWeight']],
    ['a photograph that is none', looseItem({ photographs: [{ name: 'a.png', mediaType: 'image/png', bytes: new Uint8Array([1, 2, 3, 4]), caption: '', light: 'white' }] }), ['photographs.0.bytes']],
  ])('%s', (_name, item, fields) => {
    expect(fieldsOf([item])).toEqual(fields.map((field) => `${PATH}.${field}`));
  });
  test('a gram reading is compared in carat: 0.20468 g are 1.0234 ct', () => {
    expect(fieldsOf([looseItem({ grossWeight: 20_468, weightUnit: 'g' })])).toEqual([]);
    expect(fieldsOf([looseItem({ grossWeight: 20_400, weightUnit: 'g' })])).toEqual([`${PATH}.grossWeight`]);
  });
  test('due dates that are past or do not exist', () => {
    expect(fieldsOf(undefined, { dueOn: '2026-03-01' })).toEqual(['dueOn']);
    expect(fieldsOf(undefined, { dueOn: '2026-02-30' })).toEqual(['dueOn']);
  });
  test('one seal on two parcels', () => {
    const parcel = { sealNumber: 'S-1', remarks: '', items: [looseItem()] };
    expect(fieldsOf(undefined, { parcels: [parcel, { ...parcel, sealNumber: ' S-1 ' }] })).toEqual(['parcels.1.sealNumber']);
  });
});
