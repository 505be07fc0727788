import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../../app/files/read-spectrum-file.ts';
import { loadScenario } from '../../../../main/demonstration/load-scenario.ts';
import type { ScenarioStone, Setup } from '../../../../main/demonstration/scenario-schema.ts';
import { simulateCurve } from '../../../../main/demonstration/simulate-curve.ts';
import { writeInstrumentFile } from '../../../../main/demonstration/write-instrument-file.ts';

const scenario = loadScenario();
const stone: ScenarioStone = { is: 'natural-ia', seed: 5, position: '', shape: 'round', measurements: '', colourClass: 'colourless', weight: null, sees: [] };
const facts = { stem: 'a', title: 'SIMULATED A-1', instrument: 'Bench spectrometer', marking: scenario.marking };
const setup = (name: string): Setup => scenario.setups[name]!;
const fileOf = (name: string, format: Setup['format'], seed = 1) => {
  const curve = simulateCurve(stone, setup(name), seed);
  return { curve, file: writeInstrumentFile(curve, { method: setup(name).method, format }, facts) };
};

describe('instrument files of the demonstration', () => {
  test.each(['jcamp', 'tabs-decimal-comma', 'semicolons'] as const)('%s reads back as the curve it was written from', (format) => {
    for (const name of ['green', 'infrared', 'short-wave', 'raman', 'visible']) {
      const { curve, file } = fileOf(name, format);
      const read = readSpectrumFile(file.name, file.bytes);
      if (!read.ok) throw new Error(`${name}: ${read.error.message}`);
      const [block] = read.value.blocks;
      expect([block?.xUnit, block?.yUnit]).toEqual([curve.xUnit, curve.yUnit]);
      expect(block?.x.length).toBe(curve.x.length);
      expect(block?.x.every((x, i) => Math.abs(x - curve.x[i]!) < 1e-6 * Math.abs(x))).toBe(true);
      expect(block?.y).toEqual(curve.y);
    }
  });

  test('the bare file does not say its unit, and its positions are ångström', () => {
    const { curve, file } = fileOf('portable', 'angstrom-bare');
    const silent = readSpectrumFile(file.name, file.bytes);
    expect(silent.ok && silent.value.blocks[0]?.xUnit).toBe('unstated');
    const stated = readSpectrumFile(file.name, file.bytes, { xUnit: 'angstrom' });
    expect(stated.ok && stated.value.blocks[0]?.x[0]).toBeCloseTo(curve.x[0]! * 10, 3);
  });

  test('the damaged file is refused whole', () => {
    const { file } = fileOf('portable', 'damaged');
    const read = readSpectrumFile(file.name, file.bytes);
    expect(read.ok).toBe(false);
  });

  test.each(['jcamp', 'tabs-decimal-comma', 'semicolons', 'angstrom-bare', 'damaged'] as const)('%s says that it is simulated and invented', (format) => {
    const text = new TextDecoder().decode(fileOf('green', format).file.bytes);
    expect(text).toMatch(/SIMULATED/);
    expect(text).toContain('invented for the demonstration');
  });

  test('the same seed gives the same bytes, another seed another noise', () => {
    expect(fileOf('green', 'jcamp').file.bytes).toEqual(fileOf('green', 'jcamp').file.bytes);
    expect(fileOf('green', 'jcamp', 2).curve.y).not.toEqual(fileOf('green', 'jcamp').curve.y);
  });
});
