import { expect, test } from 'vitest';
import { cursorReadout, readoutTexts } from '../../../../app/figure/cursor-readout.ts';
import { axesFor } from '../../../../app/figure/figure-axes.ts';

test('one place in four units, and back from each', () => {
  const from = cursorReadout(572.61, 'nm', 532);
  expect(from.ramanShift).toBeCloseTo(1332.8, 0);
  expect(from.ev).toBeCloseTo(2.165, 3);
  for (const back of [cursorReadout(from.wavenumber!, 'cm-1', 532), cursorReadout(from.ev!, 'ev', 532), cursorReadout(from.ramanShift!, 'raman-shift', 532)]) {
    expect(back.nm).toBeCloseTo(572.61, 6);
  }
});

test('without a laser there is no Raman shift, and a shift says nothing else', () => {
  expect(cursorReadout(600, 'nm').ramanShift).toBeNull();
  expect(cursorReadout(1332, 'raman-shift')).toEqual({ nm: null, wavenumber: null, ev: null, ramanShift: 1332 });
});

test('no light, no number', () => {
  expect(readoutTexts(cursorReadout(-5, 'nm', 532)).slice(1)).toEqual(['–', '–', expect.anything()]);
  expect(cursorReadout(0, 'cm-1', 532).nm).toBeNull();
});

test('the read-out in words', () => {
  expect(readoutTexts(cursorReadout(737.9, 'nm', 532))).toEqual(['737.90 nm', '13548.2 cm⁻¹', '1.6798 eV', expect.stringMatching(/^52\d\d\.\d cm⁻¹$/)]);
});

test('axes that a curve can be drawn on', () => {
  expect(axesFor('nm', 532)).toContain('raman-shift');
  expect(axesFor('nm', undefined)).not.toContain('raman-shift');
  expect(axesFor('raman-shift', undefined)).toEqual(['raman-shift']);
  expect(axesFor('pixel', 532)).toEqual([]);
});
