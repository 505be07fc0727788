import { MOST_MEGAPIXELS } from './size-limits.ts';

/** Why a photograph can't be read or measured. The sentences stand beside in `sayImageRefusal`. */
export type ImageRefusal =
  | { readonly code: 'not-a-picture' }
  | { readonly code: 'damaged' }
  | { readonly code: 'too-large'; readonly megapixels: number }
  | { readonly code: 'odd-shape'; readonly width: number; readonly height: number }
  | { readonly code: 'printing-colours' };

/** The refusal as a sentence for a person and what to do next. */
export function sayImageRefusal(refusal: ImageRefusal): { readonly message: string; readonly next: string } {
  switch (refusal.code) {
    case 'not-a-picture':
      return { message: 'This file is not a JPEG, PNG or TIFF picture.', next: 'Choose the picture as the camera saved it, or save it as JPEG, PNG or TIFF.' };
    case 'damaged':
      return { message: 'This picture is damaged or cut off before its end.', next: 'Copy it again from the camera, or take it again. The record that is kept stays as it is.' };
    case 'too-large':
      return { message: `This picture says it has ${Math.ceil(refusal.megapixels)} megapixels; at most ${MOST_MEGAPIXELS} are read.`, next: 'Save it smaller, then use it again.' };
    case 'odd-shape':
      return { message: `This picture is ${refusal.width} × ${refusal.height} points: no photograph has such a shape.`, next: 'Crop it to what it shows, then use it again.' };
    case 'printing-colours':
      return { message: 'This picture is kept in printing colours (CMYK), from which light can’t be measured.', next: 'Use the picture as the camera saved it, or save it again in RGB from the original.' };
  }
}
