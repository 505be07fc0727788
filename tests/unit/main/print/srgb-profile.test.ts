import { expect, test } from 'vitest';
import { srgbProfile } from '../../../../main/print/srgb-profile.ts';

const profile = srgbProfile();
const tag = (name: string): Buffer => {
  const count = profile.readUInt32BE(128);
  for (let i = 0; i < count; i += 1) {
    const at = 132 + i * 12;
    if (profile.toString('latin1', at, at + 4) === name) return profile.subarray(profile.readUInt32BE(at + 4), profile.readUInt32BE(at + 4) + profile.readUInt32BE(at + 8));
  }
  throw new Error(`no ${name}`);
};
const xyz = (name: string): number[] => [8, 12, 16].map((at) => tag(name).readInt32BE(at) / 65_536);

test('is a display profile of the ICC’s second form with every tag that such a profile needs', () => {
  expect(profile.readUInt32BE(0)).toBe(profile.length);
  expect(profile.toString('latin1', 12, 24)).toBe('mntrRGB XYZ ');
  expect(profile.toString('latin1', 36, 40)).toBe('acsp');
  expect(profile[8]).toBe(2);
  for (const name of ['desc', 'cprt', 'wtpt', 'rXYZ', 'gXYZ', 'bXYZ', 'rTRC', 'gTRC', 'bTRC']) expect(tag(name).length).toBeGreaterThan(8);
});

test('its colorants are those of sRGB under D50, and add up to the white', () => {
  // sRGB primaries adapted to D50 by Bradford, as they are published with many sRGB profiles: (0.43607, 0.22249, 0.01392) … to four digits.
  const published = { rXYZ: [0.43607, 0.22249, 0.01392], gXYZ: [0.38515, 0.71687, 0.09708], bXYZ: [0.14307, 0.06061, 0.7141] };
  const sum = [0, 0, 0];
  for (const [name, values] of Object.entries(published)) {
    xyz(name).forEach((value, i) => {
      expect(Math.abs(value - values[i]!)).toBeLessThan(3e-4);
      sum[i]! += value;
    });
  }
  [0.9642, 1, 0.8249].forEach((value, i) => expect(Math.abs(sum[i]! - value)).toBeLessThan(1e-4));
});

test('its curve is that of IEC 61966-2-1', () => {
  const curve = tag('rTRC');
  const count = curve.readUInt32BE(8);
  const at = (encoded: number): number => curve.readUInt16BE(12 + 2 * Math.round(encoded * (count - 1))) / 65_535;
  expect(at(0)).toBe(0);
  expect(at(1)).toBe(1);
  // IEC 61966-2-1: 128/255 → 0.21586, 188/255 → 0.50289; the table is read at its nearest point.
  expect(Math.abs(at(128 / 255) - 0.21586)).toBeLessThan(0.001);
  expect(Math.abs(at(188 / 255) - 0.50289)).toBeLessThan(0.001);
});
