import { describe, expect, test } from 'vitest';
import { contract } from '../../../../app/contract/index.ts';
import { describeInputErrors, plainSentence } from '../../../../main/host/describe-input-errors.ts';

const item = {
  kind: 'loose', declared: 'round brilliant', declaredValue: '', grossWeight: 10000, weightUnit: 'ct', count: null, setting: null, condition: '', stones: [], photographs: [],
};
const intake = {
  client: { name: 'Ines Halloran', address: '', email: '', phone: '', note: '' },
  asks: 'Is it natural?', dueOn: null, remarks: '', place: 'safe 2', broughtBy: '', parcels: [{ sealNumber: '', remarks: '', items: [item] }],
};

function complaint(input: unknown) {
  const parsed = contract['cases.takeIn'].input.safeParse(input, { error: plainSentence });
  return parsed.success ? null : describeInputErrors(parsed.error.issues);
}

describe('describeInputErrors', () => {
  test('has nothing to say about a right input', () => { expect(complaint(intake)).toBeNull(); });

  test('names the field by its path and uses the contract’s own sentence', () => {
    const wrong = { ...intake, parcels: [{ ...intake.parcels[0], items: [{ ...item, declared: '', grossWeight: 0 }] }] };
    expect(complaint(wrong)?.fields).toEqual({
      'parcels.0.items.0.declared': 'Write what the client says it is.',
      'parcels.0.items.0.grossWeight': 'A weight must be more than nothing.',
    });
  });

  test('of several forms it complains about the one that was meant', () => {
    expect(complaint({ ...intake, client: { ...intake.client, name: '' } })?.fields).toEqual({ 'client.name': 'Write the client’s name.' });
    expect(complaint({ ...intake, client: { existing: '' } })?.fields).toHaveProperty(['client.existing']);
  });

  test('one wrong entry is said in the message itself', () => {
    expect(complaint({ ...intake, asks: '' })?.message).toBe('Write what the client asks for.');
  });

  test('leaves no sentence to a library', () => {
    const wrong = complaint({ ...intake, dueOn: 'soon', broughtBy: undefined, remarks: 'x'.repeat(2001), extra: 1, place: 5, parcels: [{ sealNumber: '', remarks: '', items: [{ ...item, kind: 'box', count: 1.5 }] }] });
    expect(wrong?.fields).toEqual({
      '': 'Culet does not know extra here.',
      dueOn: 'Write the date as year-month-day, for instance 2026-11-25.',
      broughtBy: 'This is missing.',
      remarks: 'At most 2000 characters.',
      place: 'This must be text.',
      'parcels.0.items.0.kind': 'This must be one of: loose, jewellery, lot.',
      'parcels.0.items.0.count': 'This must be a whole number.',
    });
  });
});
