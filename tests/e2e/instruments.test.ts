import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { emissionInstrument } from '../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone, STONE_KINDS } from '../../app/spectra/simulate/stone.ts';
import { madeLamp } from '../unit/app/calibration/made-lamp.ts';
import type { Spectrum } from '../../app/spectra/spectrum.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { lookAt, visit } from './steps/look-at.ts';

const columns = ({ x, y }: Spectrum): string => `Wavelength (nm)\tCounts\n${Array.from(x, (v, i) => `${v.toFixed(4)}\t${y[i]!.toFixed(1)}`).join('\n')}\n`;
const COUNT = 60;

describe.each(availableHosts())('instruments in %s', (host) => {
  let culet: OpenCulet;
  const folder = mkdtempSync(join(tmpdir(), 'culet-instruments-'));
  beforeAll(async () => {
    writeFileSync(join(folder, 'neon.txt'), columns(madeLamp('neon', { from: 520, to: 900, points: 3000, fwhm: 0.6, shown: (v) => v + 0.7 + 0.001 * (v - 700) })));
    // What a scale shows that lies as far off as the lamp's, which is calibrated first.
    const known = simulatePhotoluminescence(simulatedStone('natural-iia', 3), emissionInstrument({ laserNm: 532.45, fromNm: 540, toNm: 700, points: 3000, spikes: 0 }), 3);
    writeFileSync(join(folder, 'diamond.txt'), columns({ ...known, x: known.x.map((v) => v + 0.7 + 0.001 * (v - 700)) }));
    mkdirSync(join(folder, 'day', 'afternoon'), { recursive: true });
    for (let i = 0; i < COUNT; i++) {
      const curve = simulatePhotoluminescence(simulatedStone(STONE_KINDS[i % STONE_KINDS.length]!, i), emissionInstrument({ points: 1500 }), i);
      writeFileSync(join(folder, 'day', i % 2 === 0 ? '' : 'afternoon', `stone ${String(i).padStart(2, '0')}.txt`), columns(curve));
    }
    writeFileSync(join(folder, 'day', 'letter.txt'), 'Dear colleague, the curves follow.\n');
    culet = await openCulet({ host });
    await beginCasebook(culet);
    await callDoor(culet, 'instruments.save', { id: null, name: 'Bench laser', methods: ['photoluminescence'], serial: '12', place: 'Room 2', remembers: { laserNm: 532 }, checkEveryDays: 30, active: true });
  });
  afterAll(async () => { await culet.close(); rmSync(folder, { recursive: true, force: true }); });
  const button = (name: string) => culet.page.getByRole('button', { name, exact: true });

  test('a lamp’s curve calibrates one, and the list says so', async () => {
    await visit(culet, '#/instruments', 'Instruments');
    await button('Calibrate').click();
    await culet.page.getByLabel('File of the lamp’s curve').setInputFiles(join(folder, 'neon.txt'));
    await culet.page.getByRole('alert').getByText(/mercury–argon lamp/).waitFor();
    await lookAt(culet, 'calibrate-wrong-lamp', ['light']);
    await culet.page.getByLabel('Lamp or standard').selectOption('neon');
    await culet.page.getByText(/the scale read 0\.6\d nm off/).waitFor();
    await culet.page.getByRole('img', { name: /^Residuals of/ }).waitFor();
    await lookAt(culet, 'calibrate', ['light', 'dark']);
    await culet.page.keyboard.press('ControlOrMeta+Enter');
    await culet.page.getByText(/scale by neon lamp: positions within 0\.\d+ nm, corrected/).waitFor();
    expect(await culet.page.getByText(/^in order, every/).count()).toBe(1);
    await lookAt(culet, 'instruments-calibrated', ['light']);
  });

  test('a known diamond’s line tells the true laser, which the next runs begin with', async () => {
    await visit(culet, '#/instruments', 'Instruments');
    await button('Measure the laser').click();
    await culet.page.getByLabel('File of the known diamond’s curve').setInputFiles(join(folder, 'diamond.txt'));
    await culet.page.getByText(/the laser is at 532\.4\d\d ± 0\.\d+ nm in air, 0\.4\d\d nm above the 532 nm/).waitFor();
    await lookAt(culet, 'laser', ['light', 'dark']);
    await culet.page.keyboard.press('ControlOrMeta+Enter');
    await culet.page.getByText(/^laser 532\.4\d* nm/).waitFor();
    await culet.page.getByText(/Raman line of a known diamond, “diamond\.txt”/).waitFor();
    await lookAt(culet, 'instruments-laser', ['light']);
  });

  test('a folder is analysed without being kept', async () => {
    await visit(culet, '#/batch', 'Analyse a folder');
    await lookAt(culet, 'batch-empty', ['light']);
    await culet.page.getByLabel('Laser, calibrated').fill('532');
    await culet.page.getByLabel('Folder to analyse').setInputFiles(join(folder, 'day'));
    await culet.page.getByText(`${COUNT + 1} of ${COUNT + 1} files`).waitFor({ timeout: 60_000 });
    await culet.page.getByText('1 not analysed').waitFor();
    expect(await culet.page.getByRole('table').getAttribute('aria-rowcount')).toBe(String(COUNT + 2));
    await lookAt(culet, 'batch', ['light', 'dark']);
    expect(await callDoor(culet, 'cases.list', { text: '', state: 'all', limit: 5, offset: 0 })).toMatchObject({ total: 0 });
  });

  test('and can be stopped', async () => {
    await culet.page.getByRole('button', { name: /^Analyse again/ }).click();
    await culet.page.getByRole('button', { name: /^Stop/ }).click();
    await culet.page.getByText('stopped').waitFor();
  });
});
