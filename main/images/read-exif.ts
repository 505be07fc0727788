import exifr from 'exifr';
import { exifFromTags, NO_EXIF, type ExifFacts } from '../../app/images/exif.ts';

/** Only what a camera says of the exposure; numbers untranslated, times as they are written (they have no zone). */
const OPTIONS = {
  tiff: true, ifd0: {}, exif: true, gps: false, interop: false, ifd1: false, makerNote: false, userComment: false, xmp: false, icc: false, iptc: false, jfif: false, ihdr: false,
  translateKeys: true, translateValues: false, reviveValues: false, mergeOutput: true,
} as const;

/** Exif facts of a JPEG, PNG or TIFF file. A file without them, or with a damaged block, says nothing. */
export async function readExif(bytes: Uint8Array): Promise<ExifFacts> {
  try {
    const tags = await exifr.parse(bytes, OPTIONS as object) as Record<string, unknown> | undefined;
    return tags === undefined ? NO_EXIF : exifFromTags(tags);
  } catch {
    return NO_EXIF;
  }
}
