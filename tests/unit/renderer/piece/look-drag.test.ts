import { describe, expect, test } from 'vitest';
import { NO_EXIF } from '../../../../app/images/exif.ts';
import { AS_TAKEN, pictureView, pointsPerMillimetre, shownPicture } from '../../../../app/piece/picture-view.ts';
import { exifFacts } from '../../../../renderer/piece/exif-words.ts';
import { cropTo, scaleAlong } from '../../../../renderer/piece/look-drag.ts';
import { readMapDraft, sameSheet } from '../../../../renderer/piece/map-draft.ts';

const PICTURE = { width: 600, height: 400 };

describe('dragging in a photograph', () => {
  test('keeps the part that was dragged out, and a part of that part the second time', () => {
    const once = cropTo(PICTURE, AS_TAKEN, { x: 450, y: 300 }, { x: 150, y: 100 })!;
    expect(once.crop).toEqual({ x: 0.25, y: 0.25, width: 0.5, height: 0.5 });
    const twice = cropTo(PICTURE, once, { x: 0, y: 0 }, { x: 150, y: 100 })!;
    expect(twice.crop).toEqual({ x: 0.25, y: 0.25, width: 0.25, height: 0.25 });
    expect(shownPicture(PICTURE, twice).size).toEqual({ width: 150, height: 100 });
  });

  test('stays inside the picture and gives a view that may be kept; a slip of the hand crops nothing', () => {
    const outside = cropTo(PICTURE, { ...AS_TAKEN, rotation: 33 }, { x: -50, y: -50 }, { x: 9000, y: 9000 });
    expect(pictureView.safeParse(outside).success).toBe(true);
    expect(outside?.crop).toEqual({ x: 0, y: 0, width: 1, height: 1 });
    expect(cropTo(PICTURE, AS_TAKEN, { x: 10, y: 10 }, { x: 12, y: 12 })).toBeNull();
  });

  test('a line makes the scale, however the picture is turned', () => {
    const turned = { ...AS_TAKEN, rotation: 90 };
    const scaled = scaleAlong(PICTURE, turned, { x: 100, y: 100 }, { x: 100, y: 350 })!;
    expect(pointsPerMillimetre(PICTURE, scaled)).toBeCloseTo(25, 8);
    expect(scaleAlong(PICTURE, AS_TAKEN, { x: 1, y: 1 }, { x: 1, y: 1 })).toBeNull();
    expect(scaleAlong(PICTURE, { ...scaled, scale: { ...scaled.scale!, millimetres: 4 } }, { x: 0, y: 0 }, { x: 50, y: 0 })?.scale?.millimetres).toBe(4);
  });
});

describe('what the camera wrote', () => {
  test('is told in the way it is spoken of', () => {
    const facts = exifFacts({ ...NO_EXIF, takenAt: '2026-11-20 10:02:11', exposureSeconds: 1 / 60, fNumber: 5.6, iso: 400, orientation: 6, camera: 'Invented Camera' });
    expect(facts.map((fact) => fact.text)).toEqual(['2026-11-20 10:02:11', '1/60 s', 'f/5.6', 'ISO 400', 'Invented Camera', 'yes; shown upright']);
    expect(exifFacts({ ...NO_EXIF, exposureSeconds: 2.5 })[0]?.text).toBe('2.5 s');
    expect(exifFacts(NO_EXIF)).toEqual([]);
  });
});

describe('a kept draft of a map', () => {
  const sheet = { name: 'front', ground: { kind: 'grid' as const, columns: 2, rows: 2 }, marks: [] };
  test('is read where it is whole, and taken for none where it is not', () => {
    expect(readMapDraft({ ...sheet, onVersion: 3 })).toEqual({ ...sheet, onVersion: 3 });
    for (const bad of [null, {}, { ...sheet }, { ...sheet, onVersion: 1, marks: [{ x: 7 }] }]) expect(readMapDraft(bad)).toBeNull();
    expect(sameSheet(sheet, { ...sheet })).toBe(true);
    expect(sameSheet(sheet, { ...sheet, name: 'back' })).toBe(false);
  });
});
