import { describe, expect, test } from 'vitest';
import { exifFromTags, NO_EXIF } from '../../../../app/images/exif.ts';

describe('exifFromTags', () => {
  test('reads what a camera writes', () => {
    expect(exifFromTags({
      Make: 'Invented', Model: 'Invented One\0\0', DateTimeOriginal: '2026:03:04 10:11:12', ExposureTime: 0.25, FNumber: 5.6, ISO: [400, 0], Orientation: 6, GainControl: 1, FocalLength: 90, LensModel: ' Macro ',
    })).toEqual({
      takenAt: '2026-03-04 10:11:12', exposureSeconds: 0.25, fNumber: 5.6, iso: 400, orientation: 6, gainControl: 1, focalLengthMm: 90, camera: 'Invented One', lens: 'Macro',
    });
  });

  test('takes what is not as the standard says as missing', () => {
    expect(exifFromTags({ ExposureTime: -1, FNumber: Number.NaN, ISO: 'high', Orientation: 9, GainControl: 1.5, DateTimeOriginal: '0000:00:00 00:00:00', Model: '\0' })).toEqual(NO_EXIF);
  });
});
