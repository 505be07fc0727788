import { z } from 'zod';

/** What a camera wrote into its file; every part may be missing. */
export const exifFacts = z.object({
  /** As the camera's clock had it, yyyy-mm-dd hh:mm:ss without a zone. */
  takenAt: z.string().nullable(),
  /** Seconds. */
  exposureSeconds: z.number().positive().nullable(),
  fNumber: z.number().positive().nullable(),
  iso: z.number().positive().nullable(),
  /** 1 to 8 as in the Exif standard, clause Orientation; 1 where the file does not say. */
  orientation: z.number().int().min(1).max(8),
  /** The gain that the camera says it used beside the sensitivity: 0 none, 1 low up, 2 high up, 3 low down, 4 high down (Exif GainControl). */
  gainControl: z.number().int().nullable(),
  focalLengthMm: z.number().positive().nullable(),
  camera: z.string().nullable(),
  lens: z.string().nullable(),
});
export type ExifFacts = z.infer<typeof exifFacts>;

/** A file that says nothing. */
export const NO_EXIF: ExifFacts = {
  takenAt: null, exposureSeconds: null, fNumber: null, iso: null, orientation: 1, gainControl: null, focalLengthMm: null, camera: null, lens: null,
};

const positive = (value: unknown): number | null => {
  const first: unknown = Array.isArray(value) ? value[0] : value;
  return typeof first === 'number' && Number.isFinite(first) && first > 0 ? first : null;
};
// Cameras pad words with zero bytes and blanks.
const word = (value: unknown): string | null => (typeof value === 'string' ? value.replaceAll(String.fromCharCode(0), '').trim().slice(0, 120) || null : null);

/** The Exif form "yyyy:mm:dd hh:mm:ss", with the day written as one is used to. */
function instantOf(value: unknown): string | null {
  const found = typeof value === 'string' ? /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}:\d{2}:\d{2})/.exec(value) : null;
  return found === null || found[1] === '0000' ? null : `${found[1]}-${found[2]}-${found[3]} ${found[4]}`;
}

function cameraOf(tags: Readonly<Record<string, unknown>>): string | null {
  const [make, model] = [word(tags['Make']), word(tags['Model'])];
  if (make === null || model === null) return model ?? make;
  return model.toLowerCase().startsWith(make.toLowerCase()) ? model : `${make} ${model}`;
}

/**
 * Facts from the tags of a file by their Exif names, values untranslated. Anything that is not what the standard says is
 * taken as missing: a damaged tag must not stop a photograph from being kept. Source: CIPA DC-008 (Exif).
 */
export function exifFromTags(tags: Readonly<Record<string, unknown>>): ExifFacts {
  const orientation = tags['Orientation'];
  const gain = tags['GainControl'];
  return {
    takenAt: instantOf(tags['DateTimeOriginal'] ?? tags['CreateDate'] ?? tags['ModifyDate']),
    exposureSeconds: positive(tags['ExposureTime']),
    fNumber: positive(tags['FNumber']),
    iso: positive(tags['ISO']),
    orientation: typeof orientation === 'number' && Number.isInteger(orientation) && orientation >= 1 && orientation <= 8 ? orientation : 1,
    gainControl: typeof gain === 'number' && Number.isInteger(gain) && gain >= 0 && gain <= 4 ? gain : null,
    focalLengthMm: positive(tags['FocalLength']),
    camera: cameraOf(tags),
    lens: word(tags['LensModel']),
  };
}
