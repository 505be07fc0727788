import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AnalysisOf } from '../../../../app/contract/images.ts';
import { photographPiece, type SimulatedView } from '../../../../app/images/simulate/photograph-piece.ts';
import { photographStrain } from '../../../../app/images/simulate/retardation.ts';
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

async function add(name: string, light: 'white' | 'long-wave' | 'short-wave' | 'polarised', bytes: Uint8Array, mediaType: 'image/jpeg' | 'image/png' = 'image/jpeg'): Promise<void> {
  const added = await house.casebook.photographs.add({ at: house.now(), personId: house.examiner, operation: 'photographs.add' }, { caseId, itemId, stoneId: null, name: `${name}.${mediaType === 'image/jpeg' ? 'jpg' : 'png'}`, mediaType, bytes, caption: name, light });
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

type Pair = AnalysisOf<'pair'>['content'];
/** Content of an answer that must be a compared pair. */
function pairOf(answer: Awaited<ReturnType<typeof compare>>): Pair {
  if (!answer.ok || answer.value.content.kind !== 'pair') throw new Error('no pair was compared');
  return answer.value.content;
}

const compare = (shortWave: string, change: { stops?: number | null; mapId?: string | null; longWave?: string } = {}) =>
  house.as(house.examiner, 'images.comparePair', { itemId, longWaveId: ids[change.longWave ?? 'long']!, shortWaveId: ids[shortWave]!, mapId: change.mapId === undefined ? ids['map']! : change.mapId, stops: change.stops ?? null });

describe('a pair of photographs', () => {
  test('is compared with the exposure from the files, kept, and gives the same numbers again', async () => {
    const first = await compare('short');
    const again = await compare('short');
    if (!first.ok || !again.ok) throw new Error('not compared');
    const content = pairOf(first);
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
    const there = pairOf(carried).result.stones;
    pairOf(direct).result.stones.forEach((stone, i) => expect(there[i]!.logRatio).toBeCloseTo(stone.logRatio!, 1));
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

describe('an after-glow', () => {
  const SECONDS = [1, 3, 6, 10, 16, 24];
  /** Lifetimes in seconds: most fade fast, the third stays. */
  const lifetime = (i: number): number => (i === 2 ? 12 : 4);
  beforeAll(async () => {
    for (const seconds of SECONDS) {
      const fading = { ...piece, stones: piece.stones.map((stone, i) => ({ ...stone, longWave: [0.1, 0.25, 0.4].map((part) => part * Math.exp(-seconds / lifetime(i))) as unknown as readonly [number, number, number] })) };
      const { width, height, data } = photographPiece(fading, { light: 'long-wave', seed: 20 + seconds, bits: 16 });
      await add(`glow-${seconds}`, 'short-wave', new Uint8Array(await loadSharp()(data, { raw: { width, height, channels: 3 } }).toColourspace('rgb16').png().toBuffer()), 'image/png');
    }
  });
  const frames = () => SECONDS.map((seconds) => ({ photographId: ids[`glow-${seconds}`]!, seconds }));

  test('gives each stone its lifetime with an error, and proposes what was measured', async () => {
    const made = await house.done(house.examiner, 'images.decay', { itemId, mapId: ids['map']!, frames: frames().reverse() });
    if (made.content.kind !== 'decay') throw new Error('no decay');
    made.content.result.stones.forEach((stone, i) => {
      const slowest = stone.fit!.terms.at(-1)!;
      expect(slowest.lifetime / lifetime(i)).toBeCloseTo(1, 1);
      expect(slowest.lifetimeError).toBeLessThan(0.2 * slowest.lifetime);
    });
    expect(made.content.result.notes.join(' ')).toContain('do not all say their exposure');
    await house.done(house.examiner, 'images.propose', { analysisId: made.id, stoneIds: [stones['A-3']!], cautions: ['ultraviolet'] });
    const folder = await house.done(house.examiner, 'stones.folder', { stoneId: stones['A-3']! });
    expect(folder.findings.filter((finding) => finding.method === 'phosphorescence')).toMatchObject([{ code: 'afterglow:measured', state: 'proposed', statement: expect.stringMatching(/lifetime 1[12]/) as unknown }]);
  });

  test('refuses a photograph twice and a time twice', async () => {
    const [first, second, third] = frames();
    const ask = (list: ReturnType<typeof frames>) => house.as(house.examiner, 'images.decay', { itemId, mapId: ids['map']!, frames: list });
    expect(await ask([first!, second!, { ...third!, photographId: first!.photographId }])).toMatchObject({ ok: false, error: { message: expect.stringContaining('twice') as unknown } });
    expect(await ask([first!, second!, { ...third!, seconds: 3 }])).toMatchObject({ ok: false, error: { message: expect.stringContaining('same time') as unknown } });
  });
});

test('strain between crossed polarisers is read as an indication', async () => {
  const strained = photographStrain((x) => ({ retardation: 160 + 120 * Math.sin(14 * x), angleDegrees: 45 }), 300);
  await add('strain', 'polarised', new Uint8Array(await loadSharp()(strained.data, { raw: { width: 300, height: 300, channels: 3 } }).png().toBuffer()), 'image/png');
  const map = await house.done(house.examiner, 'pieces.saveMap', { mapId: null, itemId, onVersion: 0, name: 'strain', ground: { kind: 'photograph', photographId: ids['strain']! }, marks: [{ id: 's1', stoneId: stones['A-1']!, number: 1, x: 0.5, y: 0.5, radius: 0.48 }] });
  const made = await house.done(house.examiner, 'images.polarisers', { itemId, photographId: ids['strain']!, mapId: map.id });
  if (made.content.kind !== 'polarisers') throw new Error('no reading');
  expect(made.content.result.stones[0]!.pattern).toMatchObject({ indication: 'directional' });
  expect(Math.abs(made.content.result.stones[0]!.pattern!.directionDegrees! - 90)).toBeLessThan(2);
  await house.done(house.examiner, 'images.propose', { analysisId: made.id, stoneIds: [stones['A-1']!], cautions: [] });
  const folder = await house.done(house.examiner, 'stones.folder', { stoneId: stones['A-1']! });
  expect(folder.findings.map((finding) => finding.code)).toContain('strain-measured:directional');
  expect(await house.as(house.examiner, 'images.polarisers', { itemId, photographId: ids['long']!, mapId: map.id })).toMatchObject({ ok: false, error: { message: 'The marks of that map were placed on another photograph.' } });
});
