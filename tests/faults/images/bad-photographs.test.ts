import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inRoot } from '../../../scripts/lib/paths.mjs';
import { photographPiece } from '../../../app/images/simulate/photograph-piece.ts';
import { simulatedPiece } from '../../../app/images/simulate/simulated-piece.ts';
import { loadSharp } from '../../../main/images/load-sharp.ts';
import { createInlinePool } from '../../../main/workers/inline-pool.ts';
import { createTaskPool, type TaskPool } from '../../../main/workers/task-pool.ts';
import { INTAKE, openHouse, type House } from '../../unit/main/services/work-house.ts';

const WORKER = inRoot('dist', 'main', 'worker.cjs');
const [WIDTH, HEIGHT] = [600, 450];
const piece = simulatedPiece({ width: WIDTH, height: HEIGHT, count: 7, seed: 8 });

let house: House;
let pool: TaskPool;
let itemId: string;
let caseId: string;
const ids: Record<string, string> = {};

type Picture = ReturnType<ReturnType<typeof loadSharp>>;
const pictureOf = (view: Parameters<typeof photographPiece>[1], shown = piece): Picture => {
  const { width, height, data } = photographPiece(shown, view);
  return loadSharp()(data, { raw: { width, height, channels: 3 } });
};

async function keep(name: string, bytes: Uint8Array, mediaType: 'image/jpeg' | 'image/png'): Promise<void> {
  const added = await house.casebook.photographs.add({ at: house.now(), personId: house.examiner, operation: 'photographs.add' }, { caseId, itemId, stoneId: null, name, mediaType, bytes, caption: name, light: 'short-wave' });
  if (!added.ok) throw new Error(`${name}: ${JSON.stringify(added.error)}`);
  ids[name] = added.value.id;
}

beforeAll(async () => {
  // In the built worker where there is one, as in the program; else on this thread.
  pool = existsSync(WORKER) ? createTaskPool({ workerFile: WORKER }) : createInlinePool();
  house = await openHouse({ pool });
  const taken = await house.takeIn({ parcels: [{ ...INTAKE.parcels[0]!, items: [INTAKE.parcels[0]!.items[2]!] }] });
  caseId = taken.caseId;
  itemId = taken.items['A']!;
  const jpeg = async (picture: Picture): Promise<Uint8Array> => new Uint8Array(await picture.jpeg({ quality: 95 }).toBuffer());
  await keep('long.jpg', await jpeg(pictureOf({ light: 'long-wave' })), 'image/jpeg');
  await keep('short.jpg', await jpeg(pictureOf({ light: 'short-wave', seed: 2 })), 'image/jpeg');
  await keep('smaller.jpg', await jpeg(pictureOf({ light: 'short-wave' }).resize(WIDTH - 2)), 'image/jpeg');
  await keep('blurred.jpg', await jpeg(pictureOf({ light: 'short-wave', blur: 1 }).blur(45)), 'image/jpeg');
  await keep('black.jpg', await jpeg(pictureOf({ light: 'short-wave', stops: -10 }, { ...piece, stones: [] })), 'image/jpeg');
  await keep('cmyk.jpg', await jpeg(pictureOf({ light: 'short-wave' }).toColourspace('cmyk')), 'image/jpeg');
  const wide = photographPiece(piece, { light: 'short-wave', seed: 2, bits: 16 });
  await keep('wide.png', new Uint8Array(await loadSharp()(wide.data, { raw: { width: WIDTH, height: HEIGHT, channels: 3 } }).toColourspace('rgb16').png().toBuffer()), 'image/png');
  // Whole in its frame, so that it is kept; its points end early.
  const hollow = await jpeg(pictureOf({ light: 'short-wave' }));
  await keep('hollow.jpg', Uint8Array.from([...hollow.subarray(0, Math.floor(0.5 * hollow.length)).filter((_, i, all) => !(i === all.length - 1 && all[i] === 0xff)), 0xff, 0xd9]), 'image/jpeg');
});
afterAll(async () => { house.close(); await pool.close(); });

const compare = (name: string) => house.as(house.examiner, 'images.comparePair', { itemId, longWaveId: ids['long.jpg']!, shortWaveId: ids[name]!, mapId: null, stops: 0 });

describe('a photograph that can’t be measured', () => {
  test.each([
    ['smaller.jpg', 'The two photographs are not of the same size.'], ['blurred.jpg', 'don’t fit together'], ['black.jpg', 'The short-wave photograph is black'],
    ['cmyk.jpg', '“cmyk.jpg” is kept in printing colours (CMYK)'], ['hollow.jpg', '“hollow.jpg” is damaged or cut off'],
  ])('%s is refused in a sentence, nothing is kept, and the next pair is compared', async (name, words) => {
    const answer = await compare(name);
    expect(answer.ok ? 'compared' : answer.error.message).toContain(words);
    expect(answer.ok || answer.error.next.length > 20).toBe(true);
    expect(await house.done(house.examiner, 'images.ofItem', { itemId })).toEqual([]);
    const content = await house.casebook.photographs.content(ids[name]!);
    expect(content.ok).toBe(true);
  });

  test('one of sixteen bits is measured beside one of eight, one without a word of its exposure is said so', async () => {
    const answer = await house.as(house.examiner, 'images.comparePair', { itemId, longWaveId: ids['long.jpg']!, shortWaveId: ids['wide.png']!, mapId: null, stops: null });
    if (!answer.ok || answer.value.content.kind !== 'pair') throw new Error('not compared');
    expect(answer.value.content.result.stones).toHaveLength(7);
    expect(answer.value.content.result).toMatchObject({ stopsFrom: 'assumed-equal' });
    expect(answer.value.content.result.notes.join(' ')).toContain('Neither file says its exposure');
  });

  test('work that is cancelled keeps nothing', async () => {
    const before = await house.done(house.examiner, 'images.ofItem', { itemId });
    const stop = new AbortController();
    stop.abort();
    const answer = await house.as(house.examiner, 'images.comparePair', { itemId, longWaveId: ids['long.jpg']!, shortWaveId: ids['short.jpg']!, mapId: null, stops: 0 }, stop.signal);
    expect(answer).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await house.done(house.examiner, 'images.ofItem', { itemId })).toEqual(before);
  });
});
