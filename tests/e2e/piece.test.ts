import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writePng } from '../../main/demonstration/write-png.ts';
import { loadSharp } from '../../main/images/load-sharp.ts';
import { slowness } from '../fixtures/slowness.ts';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { keptData, workAs } from './steps/kept-data.ts';
import { focusedName } from './steps/keyboard.ts';

const WIDTH = 600;
const HEIGHT = 400;
/** Where the bright stones of the picture lie, in parts of its width and height. */
const SPOTS = [[0.25, 0.3], [0.5, 0.3], [0.75, 0.3], [0.25, 0.7], [0.5, 0.7], [0.75, 0.7]] as const;

/** Six bright discs on a dark ground. */
function brightStones(): Uint8Array {
  const rgb = new Uint8Array(WIDTH * HEIGHT * 3).fill(8);
  for (const [x, y] of SPOTS) {
    for (let py = 0; py < HEIGHT; py += 1) for (let px = 0; px < WIDTH; px += 1) if (Math.hypot(px - x * WIDTH, py - y * HEIGHT) < 24) rgb.fill(200, (py * WIDTH + px) * 3, (py * WIDTH + px) * 3 + 3);
  }
  return writePng({ width: WIDTH, height: HEIGHT, rgb }, 'invented');
}

describe.each(availableHosts())('the map of a piece in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  let caseId: string;
  let itemId: string;
  let stones: readonly string[];
  beforeAll(async () => {
    culet = await data.open();
    await beginCasebook(culet);
    ({ caseId } = await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers')));
    const ring = (await callDoor(culet, 'cases.get', { caseId })).parcels[0]!.items.find((item) => item.kind === 'jewellery')!;
    itemId = ring.id;
    stones = ring.stones.map((stone) => stone.label);
    await callDoor(culet, 'photographs.add', { caseId, itemId, stoneId: null, name: 'long wave.png', mediaType: 'image/png', bytes: brightStones(), caption: '', light: 'long-wave' });
  });
  afterAll(async () => { await data.remove(); });

  const goTo = async (hash: string) => { await culet.page.evaluate((to) => { window.location.hash = to; }, hash); };
  const maps = async () => (await callDoor(culet, 'pieces.get', { itemId })).maps;
  const press = (key: string) => culet.page.keyboard.press(key);
  const marks = () => culet.page.getByRole('group', { name: 'Marks' }).locator('.mark');
  const saved = (version: number) => culet.page.locator('.note').filter({ hasText: `is saved, version ${version}.` }).waitFor();

  test('is begun, filled and tied with keys alone', async () => {
    await goTo(`#/case/${caseId}`);
    await culet.page.getByRole('navigation', { name: 'This case' }).getByRole('button', { name: /jewellery/ }).focus();
    await press('Enter');
    await culet.page.getByRole('button', { name: 'Map of the piece' }).waitFor();
    await press('m');
    await culet.page.getByText('No map of this piece yet').waitFor();
    await expect.poll(() => focusedName(culet.page)).toBe('Begin a map');
    await press('Enter');
    await culet.page.getByRole('dialog', { name: /^New map/ }).waitFor();
    await press('Control+Enter');
    await culet.page.getByText(`six stones without a mark: ${stones.slice(0, -1).join(', ')} and ${stones.at(-1)}.`).waitFor();
    await culet.page.locator('.picture-crop img').waitFor();
    await press('p');
    await press('Enter');
    await expect.poll(() => focusedName(culet.page)).toContain(`Mark 1, stone ${stones[0]}`);
    for (let i = 0; i < 5; i += 1) await press('ArrowLeft');
    await press('Shift+ArrowUp');
    await press('+');
    await press('Control+s');
    await saved(2);
    const [map] = await maps();
    expect(map?.marks[0]).toMatchObject({ number: 1, x: expect.closeTo(0.5 - 5 / 250, 6) as number });
    expect(map?.marks[0]?.y).toBeLessThan(0.5);
    expect(map?.marks[0]?.radius).toBeCloseTo(0.025 * 1.1, 8);
    await press('Control+z');
    await press('Control+z');
    await press('Control+y');
    await press('Delete');
    await expect.poll(() => marks().count()).toBe(0);
  });

  test('finds the bright stones, which are then numbered and tied', async () => {
    await press('Escape');
    await press('s');
    await culet.page.getByText('six outlines found where the picture is bright').waitFor();
    await press('a');
    await culet.page.getByRole('button', { name: 'in rows' }).click();
    await culet.page.getByRole('button', { name: /^Tie open marks/ }).click();
    await culet.page.getByText('Every stone of the piece has its mark.').waitFor();
    await press('Control+s');
    await saved(3);
    const placed = (await maps())[0]!.marks.toSorted((a, b) => a.number - b.number);
    expect(placed).toHaveLength(SPOTS.length);
    placed.forEach((mark, i) => {
      expect(mark.x).toBeCloseTo(SPOTS[i]![0], 2);
      expect(mark.y).toBeCloseTo(SPOTS[i]![1], 2);
    });
  });

  test('a mark leads through all others and to its stone', async () => {
    await press('n');
    await expect.poll(() => focusedName(culet.page)).toContain(`Mark 1, stone ${stones[0]}`);
    await press('n');
    await expect.poll(() => focusedName(culet.page)).toContain(`Mark 2, stone ${stones[1]}`);
    await culet.page.getByRole('region', { name: 'Mark 2' }).getByText('Not tested yet.').waitFor();
    await press('o');
    await culet.page.getByRole('heading', { level: 1, name: new RegExp(`Stone ${stones[1]}`) }).waitFor();
    await culet.page.getByRole('img', { name: new RegExp(`where ${stones[1]} sits`) }).waitFor();
  });

  test('is placed and moved by hand, and what is not saved is there again after the window was closed', async () => {
    await goTo(`#/piece/${itemId}`);
    await culet.page.locator('.picture-crop img').waitFor();
    await expect.poll(() => marks().count()).toBe(SPOTS.length);
    const box = (await marks().first().locator('.mark-hit').boundingBox())!;
    const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await culet.page.mouse.move(from.x, from.y);
    await culet.page.mouse.down();
    await culet.page.mouse.move(from.x + 20, from.y + 10, { steps: 4 });
    await culet.page.mouse.up();
    await press('Escape');
    await press('Escape');
    await press('p');
    await culet.page.mouse.click(from.x + 100, from.y + 60);
    await expect.poll(() => marks().count()).toBe(SPOTS.length + 1);
    await expect.poll(async () => (await callDoor(culet, 'bench.today', {})).drafts.some((draft) => draft.key.startsWith('map:'))).toBe(true);
    culet = await data.open();
    await workAs(culet, LABORATORY.person);
    await goTo(`#/piece/${itemId}`);
    await culet.page.locator('.note').filter({ hasText: 'Marks that were not saved last time are here again.' }).waitFor();
    await expect.poll(() => marks().count()).toBe(SPOTS.length + 1);
    expect((await maps())[0]?.marks).toHaveLength(SPOTS.length);
    await press('Control+s');
    await saved(4);
    await culet.page.getByText(/^Version 4/).click();
    await culet.page.getByText('1 placed and 1 moved').waitFor();
  });

  test('stands in the report with its legend', async () => {
    const { model } = await callDoor(culet, 'reports.prepare', { caseId });
    const section = model.sections.find((one) => one.section === 'piece-map');
    expect(section?.section === 'piece-map' && section.maps[0]?.marks.map((mark) => mark.stone)).toEqual([...stones, '']);
  });

  test('a photograph is turned and cropped as a view, and saved as it came', async () => {
    await goTo(`#/case/${caseId}`);
    await culet.page.getByRole('navigation', { name: 'This case' }).getByRole('button', { name: /jewellery/ }).click();
    await culet.page.getByRole('radio', { name: /^photographs/ }).click();
    await culet.page.getByRole('button', { name: 'Open long wave.png' }).click();
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByText('600 × 400').waitFor();
    await sheet.getByText('The camera wrote nothing into it').waitFor();
    await sheet.getByRole('button', { name: 'Turn right' }).click();
    await sheet.getByRole('button', { name: 'Keep this view' }).click();
    await sheet.getByRole('button', { name: 'Show as taken' }).waitFor();
    await sheet.getByRole('button', { name: 'Keep this view' }).waitFor({ state: 'detached' });
    const photo = (await callDoor(culet, 'pieces.get', { itemId })).item.photographs[0]!;
    expect((await callDoor(culet, 'photographs.look', { photographId: photo.id }))?.view.rotation).toBe(90);
    expect(Buffer.from((await callDoor(culet, 'photographs.content', { photographId: photo.id })).bytes).equals(Buffer.from(brightStones()))).toBe(true);
    // The button that had the cursor is gone: the picture or its sheet has it now, so that Escape still closes.
    await expect.poll(() => focusedName(culet.page)).toMatch(/^The photograph|^long wave\.png$/);
    await press('Escape');
    await sheet.waitFor({ state: 'detached' });
  });

  test('a photograph of 50 megapixels opens and is zoomed without a stall of the window', async () => {
    // Smooth colours with grain: a file of the size a camera writes.
    const noise = await loadSharp()({ create: { width: 2165, height: 1444, channels: 3, background: '#445', noise: { type: 'gaussian', mean: 90, sigma: 20 } } }).png().toBuffer();
    const grain = await loadSharp()(noise).resize(8660, 5774, { fit: 'fill', kernel: 'nearest' }).jpeg({ quality: 90 }).toBuffer();
    await callDoor(culet, 'photographs.add', { caseId, itemId, stoneId: null, name: 'large.jpg', mediaType: 'image/jpeg', bytes: new Uint8Array(grain), caption: '', light: 'white' });
    // The list behind takes the new photograph up before anything is timed.
    await culet.page.getByRole('img', { name: 'large.jpg' }).waitFor({ timeout: 60_000 });
    await culet.page.evaluate(() => {
      const holder = window as unknown as { stalls: number[] };
      holder.stalls = [];
      new PerformanceObserver((list) => { holder.stalls.push(...list.getEntries().map((entry) => entry.duration)); }).observe({ type: 'longtask' });
    });
    await culet.page.getByRole('button', { name: 'Open large.jpg' }).click();
    const sheet = culet.page.getByRole('dialog');
    await sheet.getByText('8660 × 5774').waitFor({ timeout: 60_000 });
    await sheet.getByRole('img', { name: 'large.jpg' }).waitFor({ timeout: 60_000 });
    const points = () => sheet.getByRole('img', { name: 'large.jpg' }).evaluate((image) => (image as HTMLImageElement).naturalWidth);
    expect(await points()).toBeLessThan(8660); // at first a copy
    for (let i = 0; i < 14; i += 1) await sheet.getByRole('button', { name: 'Nearer' }).click();
    await expect.poll(points, { timeout: 60_000 }).toBe(8660); // so near: every point of the file
    await press('Escape');
    await sheet.waitFor({ state: 'detached' });
    const stalls = await culet.page.evaluate(() => (window as unknown as { stalls: number[] }).stalls);
    const slow = await culet.page.evaluate(slowness);
    console.log(`50 megapixels (${(grain.byteLength / 1e6).toFixed(1)} MB): longest task of the window ${Math.round(Math.max(0, ...stalls))} ms, machine ${slow.toFixed(1)} times slower than quiet`);
    // 100 ms on a quiet machine; a loaded one stretches every task, and a decoding on this thread would take seconds.
    expect(Math.max(0, ...stalls)).toBeLessThan(400 * slow);
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
  });
});
