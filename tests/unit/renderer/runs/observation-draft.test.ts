import { describe, expect, test } from 'vitest';
import { observation, type ObservedMethod } from '../../../../app/domain/observation.ts';
import { chooseIn, EMPTY_OBSERVATION, finishObservation, isEmptyObservation, toggleIn } from '../../../../renderer/runs/observation-draft.ts';
import { OBSERVATION_FIELDS } from '../../../../renderer/runs/observation-fields.ts';

const glow = (strength: string, colour?: string) => {
  const draft = chooseIn(EMPTY_OBSERVATION, 'strength', strength);
  return colour === undefined ? draft : chooseIn(draft, 'colour', colour);
};

describe('a glow', () => {
  test('inert fills in that there is no colour', () => {
    expect(finishObservation('fluorescence-long-wave', glow('inert'), '')).toEqual({ ok: true, value: { method: 'fluorescence-long-wave', strength: 'inert', colour: 'none' } });
  });
  test('a colour after inert asks for the strength again', () => {
    const done = finishObservation('fluorescence-short-wave', glow('inert', 'orange'), '');
    expect(done.ok ? {} : done.error).toEqual({ strength: 'Choose how strong it is.' });
  });
  test('an after-glow without seconds is asked for them, one that is inert is not', () => {
    const open = finishObservation('phosphorescence', glow('weak', 'blue'), '');
    expect(open.ok ? {} : Object.keys(open.error)).toEqual(['seconds']);
    expect(finishObservation('phosphorescence', glow('inert'), '')).toMatchObject({ ok: true, value: { seconds: 0 } });
  });
  test('seconds take a decimal comma and refuse words and wild numbers', () => {
    const with_ = (seconds: string) => finishObservation('phosphorescence', { ...glow('weak', 'blue'), numbers: { seconds } }, '');
    expect(with_('2,5')).toMatchObject({ ok: true, value: { seconds: 2.5 } });
    expect(with_('long').ok).toBe(false);
    expect(with_('5000').ok).toBe(false);
  });
});

describe('the microscope', () => {
  test('nothing seen and something seen exclude each other', () => {
    const some = toggleIn(toggleIn(EMPTY_OBSERVATION, 'features', 'feather'), 'features', 'graining');
    expect(some.many['features']).toEqual(['feather', 'graining']);
    const nothing = toggleIn(some, 'features', 'nothing-seen');
    expect(nothing.many['features']).toEqual(['nothing-seen']);
    expect(toggleIn(nothing, 'features', 'feather').many['features']).toEqual(['feather']);
  });
  test('a choice can be taken back, and then nothing is entered', () => {
    const none = toggleIn(toggleIn(EMPTY_OBSERVATION, 'features', 'feather'), 'features', 'feather');
    expect(isEmptyObservation(none)).toBe(true);
    expect(finishObservation('microscopy', none, '').ok).toBe(false);
  });
});

test('specific gravity needs value and uncertainty', () => {
  const done = finishObservation('specific-gravity', { ...EMPTY_OBSERVATION, numbers: { value: '3.52' } }, '');
  expect(done.ok ? [] : Object.keys(done.error)).toEqual(['uncertainty']);
  expect(finishObservation('specific-gravity', { ...EMPTY_OBSERVATION, numbers: { value: '3.52', uncertainty: '0.02' } }, ' clean ')).toEqual({ ok: true, value: { method: 'specific-gravity', value: 3.52, uncertainty: 0.02, note: 'clean' } });
});

test.each(Object.keys(OBSERVATION_FIELDS) as ObservedMethod[])('every choice offered for %s is one the casebook keeps', (method) => {
  for (const field of OBSERVATION_FIELDS[method]) {
    if (field.kind === 'number') continue;
    for (const option of field.options) {
      const others: Record<string, unknown> = {};
      for (const other of OBSERVATION_FIELDS[method]) others[other.key] = other.kind === 'number' ? (other.least + other.most) / 2 : other.kind === 'many' ? [other.options[0]!.value] : other.options[0]!.value;
      const value = field.kind === 'many' ? [option.value] : option.value;
      expect(observation.safeParse({ method, ...others, [field.key]: value }).success, `${field.key} ${option.value}`).toBe(true);
    }
  }
});
