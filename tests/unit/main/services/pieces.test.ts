import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { contract, type Input } from '../../../../app/contract/index.ts';
import { DAMAGED_PICTURE } from '../../../../app/custody/check-picture.ts';
import { MARK_LIMITS, USUAL_GRID, type Mark } from '../../../../app/piece/mark.ts';
import { AS_TAKEN } from '../../../../app/piece/picture-view.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';
import { loadSharp } from '../../../../main/images/load-sharp.ts';
import { INTAKE, openHouse, type House } from './work-house.ts';

const picture = (): Uint8Array => writePng({ width: 6, height: 4, rgb: new Uint8Array(6 * 4 * 3) }, 'invented');

describe('maps of a piece', () => {
  let house: House;
  let taken: Awaited<ReturnType<House['takeIn']>>;
  beforeEach(async () => {
    house = await openHouse();
    const [parcel] = INTAKE.parcels;
    const items = parcel!.items.map((item, index) => (index !== 2 ? item : { ...item, stones: Array.from({ length: 3 }, () => item.stones[0]!), photographs: [{ name: 'brooch.png', mediaType: 'image/png' as const, bytes: picture(), caption: '', light: 'white' as const }] }));
    taken = await house.takeIn({ parcels: [{ ...parcel!, items }] });
  });
  afterEach(() => { house.close(); });

  const mark = (number: number, stone: string | null, x = 0.5): Mark => ({ id: `mark-${number}`, number, stoneId: stone === null ? null : taken.stones[stone]!, x, y: 0.5, radius: 0.05 });
  const front = (marks: Mark[], more: Partial<Input<'pieces.saveMap'>> = {}): Input<'pieces.saveMap'> => ({ mapId: null, itemId: taken.items['C']!, onVersion: 0, name: 'front', ground: USUAL_GRID, marks, ...more });
  const get = () => house.done(house.examiner, 'pieces.get', { itemId: taken.items['C']! });

  test('are kept with their marks, their author and every earlier state', async () => {
    const made = await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1')]));
    house.pass(5);
    const { photographs } = (await get()).item;
    const ground = { kind: 'photograph' as const, photographId: photographs[0]!.id };
    const saved = await house.done(house.colleague, 'pieces.saveMap', front([mark(1, 'C-1', 0.6), mark(2, 'C-2')], { mapId: made.id, onVersion: 1, ground }));
    expect(saved).toMatchObject({ id: made.id, version: 2, by: 'Ben Invented', ground, at: house.now() });
    const back = await house.done(house.examiner, 'pieces.saveMap', front([mark(7, 'C-3')], { name: 'back' }));
    expect((await get()).maps.map((map) => [map.name, map.ordinal, map.marks.length])).toEqual([['front', 1, 2], ['back', 2, 1]]);
    expect(back.ordinal).toBe(2);
    expect((await house.done(house.examiner, 'pieces.history', { mapId: made.id })).map((one) => [one.version, one.by, one.what])).toEqual([
      [2, 'Ben Invented', 'placed on another picture, 1 placed and 1 moved'], [1, 'Ada Invented', 'made, with one mark'],
    ]);
  });

  test('every change stands in the audit ledger, vouched for, and can’t be altered', async () => {
    await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1')]));
    const { rows } = await house.casebook.audit.list({ caseId: taken.caseId, limit: 5, offset: 0 });
    expect([rows[0]!.operation, JSON.parse(rows[0]!.content)]).toMatchObject(['pieces.saveMap', { map: { name: 'front', version: 1, marks: 1, what: 'made, with one mark' } }]);
    const stored = house.casebook.handle.read.get<{ content: string }>('SELECT content FROM audit_entry ORDER BY seq DESC LIMIT 1')!.content;
    expect(Object.keys((JSON.parse(stored) as { rows: object }).rows).map((row) => row.split('/')[0])).toEqual(['piece_map', 'piece_map_version']);
    await expect(house.casebook.handle.transact((tx) => { tx.run(`UPDATE piece_map_version SET marks = '[]'`); })).rejects.toThrow(/only grows/);
    await expect(house.casebook.handle.transact((tx) => { tx.run('DELETE FROM piece_map_version'); })).rejects.toThrow(/only grows/);
  });

  test('what another person changed meanwhile is not written over', async () => {
    const made = await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1')]));
    await house.done(house.colleague, 'pieces.saveMap', front([mark(1, 'C-2')], { mapId: made.id, onVersion: 1 }));
    const late = await house.as(house.examiner, 'pieces.saveMap', front([], { mapId: made.id, onVersion: 1 }));
    expect(late).toMatchObject({ ok: false, error: { code: 'conflict', message: 'Ben Invented changed this map meanwhile.' } });
    expect((await get()).maps[0]!.marks).toHaveLength(1);
  });

  test('a map that was taken out can be brought back, and its history says both', async () => {
    const made = await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1')]));
    await house.done(house.examiner, 'pieces.removeMap', { mapId: made.id, onVersion: 1 });
    expect((await get()).maps).toEqual([]);
    expect(await house.as(house.examiner, 'pieces.removeMap', { mapId: made.id, onVersion: 2 })).toMatchObject({ ok: false, error: { code: 'not-found' } });
    await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1')], { mapId: made.id, onVersion: 2 }));
    expect((await get()).maps[0]).toMatchObject({ id: made.id, version: 3 });
    expect((await house.done(house.examiner, 'pieces.history', { mapId: made.id })).map((one) => one.what)).toEqual(['brought back; nothing', 'taken out of the piece', 'made, with one mark']);
  });

  test('marks that can’t stand are refused in a sentence, and nothing is kept', async () => {
    const refusedFor = async (input: Input<'pieces.saveMap'>): Promise<string> => {
      const answer = await house.as(house.examiner, 'pieces.saveMap', input);
      return answer.ok ? '' : answer.error.message;
    };
    expect(await refusedFor(front([mark(1, 'B-1')]))).toBe('A mark is tied to a stone of another piece.');
    expect(await refusedFor(front([mark(1, 'C-1'), { ...mark(1, 'C-2'), id: 'other' }]))).toBe('Two marks carry the same number.');
    expect(await refusedFor(front([mark(1, 'C-1'), mark(2, 'C-1')]))).toBe('Two marks are tied to the same stone.');
    expect(await refusedFor(front([], { ground: { kind: 'photograph', photographId: 'nowhere' } }))).toMatch(/^That photograph is not in this casebook/);
    expect(await refusedFor(front([], { itemId: 'nowhere' }))).toMatch(/^That piece/);
    expect(await refusedFor(front([], { mapId: 'nowhere' }))).toMatch(/^That map/);
    const { n } = house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM piece_map')!;
    expect(n).toBe(0);
  });

  test('marks outside the picture, without size, or too many do not pass the door', () => {
    const passes = (marks: unknown[]): boolean => contract['pieces.saveMap'].input.safeParse(front(marks as Mark[])).success;
    expect(passes([mark(1, null)])).toBe(true);
    for (const bad of [{ x: 1.01 }, { y: -0.01 }, { radius: 0 }, { number: 0 }, { number: 1.5 }, { x: Number.NaN }]) expect(passes([{ ...mark(1, null), ...bad }])).toBe(false);
    expect(passes(Array.from({ length: MARK_LIMITS.most + 1 }, (_, i) => mark(i + 1, null)))).toBe(false);
  });

  test('stand in the report with the opinions on their stones and what is open, and not where no mark is placed', async () => {
    const section = async () => {
      const { model } = await house.done(house.examiner, 'reports.prepare', { caseId: taken.caseId });
      return sectionOf(model, 'piece-map');
    };
    expect(await section()).toBeUndefined();
    const [photo] = (await get()).item.photographs;
    await house.done(house.examiner, 'pieces.saveMap', front([mark(1, 'C-1'), mark(2, null, 0.2)], { ground: { kind: 'photograph', photographId: photo!.id } }));
    await house.done(house.examiner, 'pieces.saveMap', front([], { name: 'back' }));
    const part = await section();
    expect(part?.maps).toHaveLength(1);
    expect(part?.maps[0]).toMatchObject({
      heading: 'Item C, front', picture: { width: 6, height: 4 }, marks: [{ number: 1, stone: 'C-1', conclusion: null }, { number: 2, stone: '' }],
      open: ['One mark without a stone: 2.'],
    });
    expect(part?.maps[0]?.caption).toMatch(/^brooch\.png, SHA-256 begins [0-9a-f]{16}\.$/);
  });

  test('a TIFF photograph is kept as it came and printed as a copy', async () => {
    const tiff = new Uint8Array(await loadSharp()({ create: { width: 90, height: 60, channels: 3, background: '#225' } }).tiff().toBuffer());
    const added = await house.casebook.photographs.add({ at: house.now(), personId: house.examiner, operation: 'photographs.add' }, { caseId: taken.caseId, itemId: taken.items['C']!, stoneId: null, name: 'brooch.tif', mediaType: 'image/tiff', bytes: tiff, caption: 'TIFF', light: 'white' });
    if (!added.ok) throw new Error(added.error.message);
    const kept = await house.casebook.photographs.content(added.value.id);
    expect(kept.ok && Buffer.from(kept.value.bytes).equals(Buffer.from(tiff))).toBe(true);
    const { model } = await house.done(house.examiner, 'reports.prepare', { caseId: taken.caseId });
    const printed = sectionOf(model, 'items')?.items.flatMap((item) => item.photographs).find((photo) => photo.caption === 'TIFF');
    expect(Buffer.from(printed!.base64, 'base64').subarray(0, 3)).toEqual(Buffer.from([0xff, 0xd8, 0xff]));
    const cut = await house.casebook.photographs.add({ at: house.now(), personId: house.examiner, operation: 'photographs.add' }, { caseId: taken.caseId, itemId: null, stoneId: null, name: 'cut.tif', mediaType: 'image/tiff', bytes: tiff.subarray(0, 400), caption: '', light: 'white' });
    expect(cut).toMatchObject({ ok: false, error: { fields: { bytes: DAMAGED_PICTURE } } });
  });

  test('a photograph is looked at turned and cropped; its bytes stay, and every look is kept', async () => {
    const [photo] = (await get()).item.photographs;
    const photographId = photo!.id;
    expect(await house.done(house.examiner, 'photographs.look', { photographId })).toBeNull();
    const view = { rotation: 90, crop: { x: 0.1, y: 0.1, width: 0.5, height: 0.5 }, scale: null };
    await house.done(house.examiner, 'photographs.saveLook', { photographId, view });
    const last = await house.done(house.colleague, 'photographs.saveLook', { photographId, view: AS_TAKEN });
    expect(last).toMatchObject({ version: 2, view: AS_TAKEN, by: 'Ben Invented' });
    expect((await get()).looks).toEqual([last]);
    const content = await house.casebook.photographs.content(photographId);
    expect(content.ok && Buffer.from(content.value.bytes).equals(Buffer.from(picture()))).toBe(true);
    expect(await house.as(house.examiner, 'photographs.saveLook', { photographId: 'nowhere', view })).toMatchObject({ ok: false, error: { code: 'not-found' } });
  });
});
