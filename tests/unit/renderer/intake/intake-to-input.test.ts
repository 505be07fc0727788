import { describe, expect, test } from 'vitest';
import { changeIntake, emptyIntake, hasContent, type IntakeChange, type IntakeForm } from '../../../../renderer/intake/intake-state.ts';
import { intakeToInput } from '../../../../renderer/intake/intake-to-input.ts';
import { intakeTotals } from '../../../../renderer/intake/intake-totals.ts';

const after = (...changes: readonly IntakeChange[]): IntakeForm => changes.reduce(changeIntake, emptyIntake('safe, tray 1'));
const filled = (...more: readonly IntakeChange[]) => after(
  { do: 'client', client: { existing: 'c1', name: 'Invented & Sons', address: '', email: '', phone: '', note: '' } },
  { do: 'item', parcel: 0, item: 0, value: { declared: 'one round stone', grossWeight: '1,0234' } },
  ...more,
);

describe('from the form to the contract', () => {
  test('a loose stone weighs what its item weighs, read on the digits', () => {
    const input = intakeToInput(filled());
    expect(input.ok && input.value.parcels[0]?.items[0]).toMatchObject({ grossWeight: 10234, weightUnit: 'ct', count: null, setting: null, stones: [{ weight: 10234 }] });
  });

  test('grams become carats for a loose stone: 1 ct = 0.2 g (4th CGPM 1907)', () => {
    const input = intakeToInput(filled({ do: 'item', parcel: 0, item: 0, value: { grossWeight: '0.2', weightUnit: 'g' } }));
    expect(input.ok && input.value.parcels[0]?.items[0]?.stones[0]?.weight).toBe(10_000);
  });

  test('an empty form says a sentence for each field that is missing', () => {
    const input = intakeToInput(emptyIntake());
    expect(input.ok).toBe(false);
    expect(Object.keys(input.ok ? {} : input.error).sort()).toEqual(['client.name', 'parcels.0.items.0.declared', 'place']);
  });

  test.each([['1.2.3', 'is not a weight'], ['1.02345', 'at most 4 decimals'], ['-1', 'is not a weight']])('refuses the weight %s in words', (grossWeight, words) => {
    const input = intakeToInput(filled({ do: 'item', parcel: 0, item: 0, value: { grossWeight } }));
    expect(input.ok ? '' : input.error['parcels.0.items.0.grossWeight']).toContain(words);
  });

  test('a count that is no number is refused at its field', () => {
    const input = intakeToInput(filled({ do: 'add-item', parcel: 0, kind: 'lot' }, { do: 'item', parcel: 0, item: 1, value: { declared: 'small stones', count: 'many' } }));
    expect(input.ok ? {} : input.error).toEqual({ 'parcels.0.items.1.count': 'Write the number of stones in digits.' });
  });
});

describe('filling in', () => {
  test('keys stay unique through adding and removing', () => {
    const form = after({ do: 'add-item', parcel: 0, kind: 'jewellery' }, { do: 'add-stones', parcel: 0, item: 1, many: 5 }, { do: 'remove-stone', parcel: 0, item: 1, stone: 2 },
      { do: 'add-stones', parcel: 0, item: 1, many: 3 }, { do: 'add-parcel' }, { do: 'add-item', parcel: 1, kind: 'lot' });
    const keys = form.parcels.flatMap((p) => [p.key, ...p.items.flatMap((i) => [i.key, ...i.stones.map((s) => s.key)])]);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('the last parcel and the last item can’t be removed', () => {
    const form = after({ do: 'remove-parcel', parcel: 0 }, { do: 'remove-item', parcel: 0, item: 0 });
    expect(form.parcels[0]?.items).toHaveLength(1);
  });

  test('an untouched form is not worth keeping, a touched one is', () => {
    expect(hasContent(emptyIntake('x'))).toBe(false);
    expect(hasContent(after({ do: 'item', parcel: 0, item: 0, value: { condition: 'a chip' } }))).toBe(true);
    expect(hasContent(after({ do: 'set', field: 'asks', value: 'Is it diamond?' }))).toBe(true);
  });

  test('totals count a lot by its count and keep carat and gram apart', () => {
    const form = filled({ do: 'add-item', parcel: 0, kind: 'lot' }, { do: 'item', parcel: 0, item: 1, value: { count: '340', grossWeight: '3.4' } }, { do: 'add-item', parcel: 0, kind: 'jewellery' }, { do: 'item', parcel: 0, item: 2, value: { grossWeight: '4.2' } }, { do: 'add-item', parcel: 0, kind: 'loose' });
    expect(intakeTotals(form)).toEqual({ items: 4, stones: 343, carat: 10234 + 34000, gram: 420_000, unweighed: 1, colourOpen: 3 });
  });
});

describe('what nobody may fill in for the person', () => {
  test('the setting of a piece must be chosen', () => {
    const input = intakeToInput(filled({ do: 'add-item', parcel: 0, kind: 'jewellery' }, { do: 'item', parcel: 0, item: 1, value: { declared: 'a ring' } }));
    expect(input.ok ? {} : input.error).toMatchObject({ 'parcels.0.items.1.setting': expect.stringContaining('open or closed') as string });
  });
  test('a stone’s colour class begins as not stated', () => {
    const input = intakeToInput(filled());
    expect(input.ok && input.value.parcels[0]?.items[0]?.stones[0]?.colourClass).toBe('unknown');
  });
});
