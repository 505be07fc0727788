import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { photographPiece, type SimulatedView } from '../../../../app/images/simulate/photograph-piece.ts';
import { simulatedPiece, type SimulatedPiece } from '../../../../app/images/simulate/simulated-piece.ts';
import { loadSharp } from '../../../../main/images/load-sharp.ts';
import { INTAKE, openHouse, type House } from './work-house.ts';

const STONES = 7;
const piece = simulatedPiece({ width: 600, height: 450, count: STONES, seed: 8, odd: { 3: 1.3 } });

async function jpegOf(shown: SimulatedPiece, view: SimulatedView, seconds: number | null): Promise<Uint8Array> {
  const { width, height, data } = photographPiece(shown, view);
  const picture = loadSharp()(data, { raw: { width, height, channels: 3 } });
  const exposed = seconds === null ? picture : picture.withExif({ IFD0: { Make: 'Invented', Model: 'One' }, IFD2: { ExposureTime: `${seconds}/1`, FNumber: '8/1', ISOSpeedRatings: '400' } });
  return new Uint8Array(await exposed.jpeg({ quality: 96 }).toBuffer());
}

let house: House;
let caseId: string;
let itemId: string;
let stones: Record<string, string>;
const ids: Record<string, string> = {};

async function add(name: string, light: 'white' | 'long-wave' | 'short-wave', bytes: Uint8Array): Promise<void> {
  const added = await house.casebook.photographs.add({ at: house.now(), personId: house.examiner, operation: 'photographs.add' }, { caseId, itemId, stoneId: null, name: `${name}.jpg`, mediaType: 'image/jpeg', bytes, caption: name, light });
  if (!added.ok) throw new Error(added.error.message);
  ids[name] = added.value.id;
}

beforeAll(async () => {
  house = await openHouse();
  const stone = (i: number) => ({ position: `place ${i + 1}`, shape: 'round', measurements: '', colourClass: 'colourless' as const, weight: null });
  const brooch = { ...INTAKE.parcels[0]!.items[2]!, stones: Array.from({ length: STONES }, (_, i) => stone(i)) };
  const taken = await house.takeIn({ parcels: [{ ...INTAKE.parcels[0]!, items: [brooch] }] });
  caseId = taken.caseId;
  itemId = taken.items['A']!;
  stones = taken.stones;
  const shift = { dx: 4.3, dy: -2.6, degrees: 0.7 };
  await add('white', 'white', await jpegOf(piece, { light: 'white', shift: { dx: -3, dy: 2, degrees: -0.4 } }, 1));
  await add('long', 'long-wave', await jpegOf(piece, { light: 'long-wave' }, 2));
  await add('short', 'short-wave', await jpegOf(piece, { light: 'short-wave', stops: 1, shift, seed: 2 }, 4));
  await add('plain', 'short-wave', await jpegOf(piece, { light: 'short-wave', stops: 1, shift, seed: 2 }, null));
  await add('other', 'short-wave', await jpegOf(simulatedPiece({ width: 600, height: 450, count: 37, seed: 77 }), { light: 'short-wave' }, 2));
  await add('black', 'short-wave', await jpegOf({ ...piece, stones: [] }, { light: 'short-wave', stops: -9 }, 2));
  const map = await house.done(house.examiner, 'pieces.saveMap', {
    mapId: null, itemId, onVersion: 0, name: 'front', ground: { kind: 'photograph', photographId: ids['long']! },
    marks: piece.stones.map(({ x, y, radius }, i) => ({ id: `mark-${i + 1}`, stoneId: stones[`A-${i + 1}`]!, number: i + 1, x: (x + 0.5) / 600, y: (y + 0.5) / 450, radius: radius / 600 })),
  });
  ids['map'] = map.id;
});
afterAll(() => { house.close(); });

const compare = (shortWave: string, change: { stops?: number | null; mapId?: string | null; longWave?: string } = {}) =>
  house.as(house.examiner, 'images.comparePair', { itemId, longWaveId: ids[change.longWave ?? 'long']!, shortWaveId: ids[shortWave]!, mapId: change.mapId === undefined ? ids['map']! : change.mapId, stops: change.stops ?? null });

describe('a pair of photographs', () => {
  test('is compared with the exposure from the files, kept, and gives the same numbers again', async () => {
    const first = await compare('short');
    const again = await compare('short');
    if (!first.ok || !again.ok) throw new Error('not compared');
    const { content } = first.value;
    expect(content.result).toMatchObject({ stopsFrom: 'exif', outside: [] });
    expect(content.result.stops).toBeCloseTo(1, 9);
    expect(content.result.stones.filter((stone) => stone.standsOut).map((stone) => stone.number)).toEqual([4]);
    expect(again.value.content.result).toEqual(content.result);
    const kept = await house.done(house.examiner, 'images.ofItem', { itemId });
    expect(kept.map((one) => one.id).slice(0, 2)).toEqual([again.value.id, first.value.id]);
    expect(content.parameters.shortWave.sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  test('becomes one run for each stone, with both photographs and findings that only the examiner accepts', async () => {
    const compared = await compare('short');
    if (!compared.ok) throw new Error(compared.error.message);
    const ask = { analysisId: compared.value.id, stoneIds: [stones['A-4']!, stones['A-5']!] };
    expect(await house.as(house.examiner, 'images.propose', { ...ask, cautions: [] })).toMatchObject({ ok: false, error: { code: 'refused' } });
    const given = await house.done(house.examiner, 'images.propose', { ...ask, cautions: ['ultraviolet'] });
    expect(given.runs.map((run) => run.stoneId)).toEqual(ask.stoneIds);
    const folder = await house.done(house.examiner, 'stones.folder', { stoneId: stones['A-4']! });
    const run = folder.runs.find((one) => one.method === 'fluorescence-short-wave')!;
    expect(run.files.map((file) => file.name)).toEqual(['long.jpg', 'short.jpg']);
    const own = folder.findings.filter((finding) => finding.runId === run.id);
    expect(own.map((finding) => [finding.code, finding.state, finding.strength])).toEqual([
      ['glow-long:measured', 'proposed', 'neutral'], ['glow-short:measured', 'proposed', 'neutral'], ['glow-pair:stands-out-short', 'proposed', 'neutral'],
    ]);
    // A second time nothing is doubled.
    const twice = await house.done(house.examiner, 'images.propose', { ...ask, cautions: ['ultraviolet'] });
    expect(twice.runs).toHaveLength(2);
  });

  test('is measured with marks that were placed on a third photograph', async () => {
    const white = await house.done(house.examiner, 'pieces.saveMap', {
      mapId: null, itemId, onVersion: 0, name: 'white', ground: { kind: 'photograph', photographId: ids['white']! },
      marks: piece.stones.map(({ x, y, radius }, i) => {
        const turn = -0.4 * Math.PI / 180;
        const [dx, dy] = [x - 299.5, y - 224.5];
        const [px, py] = [299.5 - 3 + Math.cos(turn) * dx - Math.sin(turn) * dy, 224.5 + 2 + Math.sin(turn) * dx + Math.cos(turn) * dy];
        return { id: `w${i}`, stoneId: stones[`A-${i + 1}`]!, number: i + 1, x: (px + 0.5) / 600, y: (py + 0.5) / 450, radius: radius / 600 };
      }),
    });
    const [direct, carried] = [await compare('short'), await compare('short', { mapId: white.id })];
    if (!direct.ok || !carried.ok) throw new Error('not compared');
    direct.value.content.result.stones.forEach((stone, i) => expect(carried.value.content.result.stones[i]!.logRatio).toBeCloseTo(stone.logRatio!, 1));
  });

  test('without a map looks for bright places itself', async () => {
    const compared = await compare('short', { mapId: null });
    expect(compared.ok && compared.value.content.result.stones).toHaveLength(STONES);
    expect(compared.ok && compared.value.content.result.stones.every((stone) => stone.stoneId === null)).toBe(true);
  });

  test('of which only one file tells its exposure asks for the difference, and takes it', async () => {
    expect(await compare('plain')).toMatchObject({ ok: false, error: { code: 'invalid-input', fields: { stops: expect.stringContaining('Only one') as unknown } } });
    expect(await compare('plain', { stops: 1 })).toMatchObject({ ok: true, value: { content: { result: { stopsFrom: 'stated', stops: 1 } } } });
  });

  test.each([['other', /don’t fit together/], ['black', /short-wave photograph is black/], ['long', /same photograph/]])('with “%s” as its second is refused in words', async (name, words) => {
    const before = await house.done(house.examiner, 'images.ofItem', { itemId });
    const answer = await compare(name);
    expect(!answer.ok && answer.error.message).toMatch(words);
    expect(await house.done(house.examiner, 'images.ofItem', { itemId })).toEqual(before);
  });
});

test('facts, a small copy and outlines of a kept photograph', async () => {
  const photographId = ids['long']!;
  expect(await house.done(house.examiner, 'images.facts', { photographId })).toMatchObject({ format: 'jpeg', width: 600, height: 450, exif: { exposureSeconds: 2, camera: 'Invented One' } });
  const preview = await house.done(house.examiner, 'images.preview', { photographId, longSide: 300 });
  expect([preview.jpeg[0], preview.jpeg[1], preview.jpeg.length < 40_000]).toEqual([0xff, 0xd8, true]);
  expect(await house.done(house.examiner, 'images.suggestOutlines', { photographId })).toHaveLength(STONES);
});
