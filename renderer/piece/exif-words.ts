import type { ExifFacts } from '../../app/images/exif.ts';

const SHORT = 0.3;

/** "1/60 s" for short exposures, "2.5 s" for long ones. */
const exposureText = (seconds: number): string => (seconds < SHORT ? `1/${Math.round(1 / seconds)} s` : `${Number(seconds.toPrecision(3))} s`);

/** What the camera wrote into the file, each with its name; nothing where it wrote nothing. */
export function exifFacts(exif: ExifFacts): { readonly name: string; readonly text: string }[] {
  const facts: readonly (readonly [string, string | null])[] = [
    ['Taken, by the camera’s clock', exif.takenAt],
    ['Exposure', exif.exposureSeconds === null ? null : exposureText(exif.exposureSeconds)],
    ['Aperture', exif.fNumber === null ? null : `f/${Number(exif.fNumber.toPrecision(3))}`],
    ['Sensitivity', exif.iso === null ? null : `ISO ${exif.iso}`],
    ['Focal length', exif.focalLengthMm === null ? null : `${Number(exif.focalLengthMm.toPrecision(3))} mm`],
    ['Camera, as the file says', exif.camera], ['Lens', exif.lens],
    ['Turned by the camera', exif.orientation === 1 ? null : 'yes; shown upright'],
  ];
  return facts.flatMap(([name, text]) => (text === null ? [] : [{ name, text }]));
}
