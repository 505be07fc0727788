import { describe, expect, test } from 'vitest';
import { usualAxis } from '../../../../renderer/spectrum/axis-words.ts';
import { diamondSentence } from '../../../../renderer/spectrum/diamond-sentence.ts';
import { filterReferences, referenceChoices, referenceLines } from '../../../../renderer/spectrum/reference-choices.ts';

const CHECK = { expectedNm: 428.03, foundNm: 428.04, shiftCm1: 1332.9, present: true, state: 'present', detectionLimit: null } as const;

describe('the diamond sentence', () => {
  test('says where it was found and where it was expected', () => {
    expect(diamondSentence(CHECK, 404.93)).toMatch(/present: found at 428\.04 nm, shift 1332\.9 cm⁻¹; expected at 428\.03 nm/);
  });
  test('absent and masked are told apart', () => {
    expect(diamondSentence({ ...CHECK, present: false, foundNm: null, shiftCm1: null, state: 'absent' }, 404.93)).toMatch(/^Diamond line absent/);
    expect(diamondSentence({ ...CHECK, present: false, foundNm: null, shiftCm1: null, state: 'masked' }, 404.93)).toMatch(/check has not passed/);
  });
  test('without a laser the place is not known', () => {
    expect(diamondSentence(null, null)).toMatch(/No laser wavelength/);
  });
});

describe('the usual axis', () => {
  test('follows the method as far as the curve allows', () => {
    expect(usualAxis('raman', ['nm', 'cm-1', 'ev', 'raman-shift'])).toBe('raman-shift');
    expect(usualAxis('raman', ['nm', 'cm-1', 'ev'])).toBe('nm');
    expect(usualAxis('infrared', ['nm', 'cm-1', 'ev'])).toBe('cm-1');
    expect(usualAxis('photoluminescence', ['raman-shift'])).toBe('raman-shift');
  });
});

describe('reference positions', () => {
  const choices = referenceChoices(295);
  test('are found by name, defect and position', () => {
    expect(filterReferences(choices, 'silicon').map((c) => c.id)).toContain('SIV');
    expect(filterReferences(choices, 'moissanite').some((c) => c.unit === 'raman-shift')).toBe(true);
    expect(filterReferences(choices, '3107').map((c) => c.id)).toEqual(['IR-3107']);
    expect(filterReferences(choices, '')).toHaveLength(choices.length);
  });
  test('move with the temperature', () => {
    const at = (kelvin: number) => referenceChoices(kelvin).find((c) => c.id === 'SIV')!.at[0]!;
    expect(at(295)).toBeGreaterThan(at(77));
  });
  test('become dashed lines, one for each position', () => {
    const lines = referenceLines(choices, new Set(['MOISSANITE']));
    expect(lines.map((line) => line.at)).toEqual([789, 767, 965]);
    expect(lines.every((line) => line.dash === true && line.unit === 'raman-shift')).toBe(true);
  });
  test('have one id each', () => {
    expect(new Set(choices.map((c) => c.id)).size).toBe(choices.length);
  });
});
