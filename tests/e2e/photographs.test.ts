import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { photographPiece } from '../../app/images/simulate/photograph-piece.ts';
import { photographStrain } from '../../app/images/simulate/retardation.ts';
import { simulatedPiece } from '../../app/images/simulate/simulated-piece.ts';
import { loadSharp } from '../../main/images/load-sharp.ts';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { lookAt } from './steps/look-at.ts';
import { usualCase } from './steps/hand-overs.ts';

const COUNT = 19;
const [WIDTH, HEIGHT] = [1500, 1000];
const piece = simulatedPiece({ width: WIDTH, height: HEIGHT, count: COUNT, seed: 12, odd: { 6: 1.25 } });

async function jpegUnder(light: 'long-wave' | 'short-wave', seconds: number): Promise<Uint8Array> {
  const taken = light === 'long-wave' ? { seed: 1 } : { seed: 2, stops: 1, shift: { dx: 11.3, dy: -6.8, degrees: 0.9 } };
  const { width, height, data } = photographPiece(piece, { light, ...taken });
  return new Uint8Array(await loadSharp()(data, { raw: { width, height, channels: 3 } })
    .withExif({ IFD0: { Make: 'Invented', Model: 'One' }, IFD2: { ExposureTime: `${seconds}/1`, FNumber: '8/1', ISOSpeedRatings: '400' } }).jpeg({ quality: 95 }).toBuffer());
}

describe.each(availableHosts())('photographs of a piece in %s', (host) => {
  let culet: OpenCulet;
  let caseId: string;
  let itemId: string;
  const stoneIds: string[] = [];

  beforeAll(async () => {
    culet = await openCulet({ host });
    await beginCasebook(culet);
    ({ caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Harrow & Pell')));
    const items = (await callDoor(culet, 'cases.get', { caseId })).parcels.flatMap((parcel) => parcel.items);
    const ring = items.find((item) => item.kind === 'jewellery')!;
    itemId = ring.id;
    stoneIds.push(...ring.stones.map((stone) => stone.id));
    while (stoneIds.length < COUNT) stoneIds.push((await callDoor(culet, 'stones.add', { itemId, mounted: true, position: `place ${stoneIds.length + 1}`, shape: 'round', measurements: '', colourClass: 'colourless', weight: null })).id);
    const add = async (light: 'long-wave' | 'short-wave', seconds: number) => callDoor(culet, 'photographs.add', { caseId, itemId, stoneId: null, name: `${light}.jpg`, mediaType: 'image/jpeg', bytes: await jpegUnder(light, seconds), caption: `front, ${light}`, light });
    const long = await add('long-wave', 2);
    await add('short-wave', 4);
    await callDoor(culet, 'pieces.saveMap', {
      mapId: null, itemId, onVersion: 0, name: 'front', ground: { kind: 'photograph', photographId: long.id },
      marks: piece.stones.map(({ x, y, radius }, i) => ({ id: `mark-${i + 1}`, stoneId: stoneIds[i]!, number: i + 1, x: (x + 0.5) / WIDTH, y: (y + 0.5) / HEIGHT, radius: radius / WIDTH })),
    });
  });
  afterAll(async () => { await culet.close(); });

  test('a pair is compared from the map by keys, and names the stone that is unlike the rest', async () => {
    await culet.page.evaluate((id) => { window.location.hash = `#/piece/${id}`; }, itemId);
    await culet.page.getByRole('button', { name: /Measure photographs/ }).waitFor();
    await culet.page.keyboard.press('w');
    await culet.page.getByText('2 s · f/8 · ISO 400').waitFor();
    await lookAt(culet, 'pair-form');
    await culet.page.getByRole('button', { name: 'Compare', exact: true }).click();
    await culet.page.getByRole('heading', { name: /one stone stands out/i }).waitFor();
    const first = culet.page.locator('.pair-table tbody tr').first();
    expect(await first.innerText()).toContain('stands out');
    await first.getByRole('button').click();
    await culet.page.getByRole('region', { name: 'What the photographs say of mark 7' }).waitFor();
    await culet.page.keyboard.press('b');
    await culet.page.getByRole('radio', { name: 'short-wave', exact: true, checked: true }).waitFor();
    await culet.page.keyboard.press('b');
    await lookAt(culet, 'pair');
  });

  test('findings are proposed for every measured stone, after the caution, and stand in the stone’s folder', async () => {
    await culet.page.getByRole('button', { name: /Propose findings/ }).click();
    await culet.page.getByRole('button', { name: `Propose for ${COUNT} stones` }).click();
    await culet.page.getByText('The caution for ultraviolet light was not acknowledged.').waitFor();
    await culet.page.getByRole('dialog').getByRole('checkbox').check();
    await culet.page.getByRole('button', { name: `Propose for ${COUNT} stones` }).click();
    await culet.page.getByText(`Proposed for ${COUNT} stones`).waitFor();
    const folder = await callDoor(culet, 'stones.folder', { stoneId: stoneIds[6]! });
    expect(folder.findings.map((finding) => finding.code)).toContain('glow-pair:stands-out-short');
    await culet.page.evaluate((id) => { window.location.hash = `#/stone/${id}`; }, stoneIds[6]!);
    await culet.page.getByText(/it stands out towards short-wave/).first().waitFor();
  });

  test('an after-glow is measured from photographs with their seconds, and strain from one between polarisers', async () => {
    for (const seconds of [1, 4, 9, 16]) {
      const fading = { ...piece, stones: piece.stones.map((stone, i) => ({ ...stone, longWave: [0.1, 0.25, 0.4].map((part) => part * Math.exp(-seconds / (i === 2 ? 14 : 5))) as unknown as readonly [number, number, number] })) };
      const { width, height, data } = photographPiece(fading, { light: 'long-wave', seed: 30 + seconds });
      const bytes = new Uint8Array(await loadSharp()(data, { raw: { width, height, channels: 3 } }).png().toBuffer());
      await callDoor(culet, 'photographs.add', { caseId, itemId, stoneId: null, name: `glow-${seconds}.png`, mediaType: 'image/png', bytes, caption: `after ${seconds} s`, light: 'short-wave' });
    }
    await culet.page.evaluate((id) => { window.location.hash = `#/pair/${id}/decay`; }, itemId);
    for (const seconds of [1, 4, 9, 16]) await culet.page.getByRole('textbox', { name: `Seconds after the lamp, after ${seconds} s` }).fill(String(seconds));
    await lookAt(culet, 'after-glow-form');
    await culet.page.getByRole('button', { name: 'Measure', exact: true }).click();
    await culet.page.getByRole('columnheader', { name: 'lifetime' }).waitFor();
    expect(await culet.page.locator('.measured-table tbody tr').count()).toBe(COUNT);
    await lookAt(culet, 'after-glow');
    const strained = photographStrain((x, y) => ({ retardation: 160 + 120 * Math.sin(14 * (0.6 * x + 0.8 * y)), angleDegrees: 45 }), 400);
    const bytes = new Uint8Array(await loadSharp()(strained.data, { raw: { width: 400, height: 400, channels: 3 } }).png().toBuffer());
    await callDoor(culet, 'photographs.add', { caseId, itemId, stoneId: null, name: 'strain.png', mediaType: 'image/png', bytes, caption: 'centre stone', light: 'polarised' });
    await culet.page.getByRole('radio', { name: 'crossed polarisers' }).click();
    await culet.page.getByRole('button', { name: 'Read', exact: true }).click();
    await culet.page.getByRole('cell', { name: 'directional' }).waitFor();
    await lookAt(culet, 'strain');
  });
});
