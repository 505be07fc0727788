import type { PairRefusal } from './compare-pair.ts';

type Sentence = { readonly message: string; readonly next: string };

const LAMP_WORDS = { 'long-wave': 'long-wave', 'short-wave': 'short-wave' } as const;

/** Why a pair can't be compared, for a person. */
export function sayPairRefusal(refusal: PairRefusal): Sentence {
  switch (refusal.code) {
    case 'sizes-differ': return { message: 'The two photographs are not of the same size.', next: 'Take both with the same camera and the same settings, without moving the piece, and keep them uncropped.' };
    case 'black-frame': return { message: `The ${LAMP_WORDS[refusal.lamp]} photograph is black: nothing glows in it.`, next: 'Take it again with a longer exposure, or record by hand that the piece is inert under this lamp.' };
    case 'does-not-fit': return { message: `The two photographs don’t fit together: ${refusal.agreeing} of ${refusal.compared} places that could be compared agree.`, next: 'Check that both show the same piece, sharp and from the same side. If the piece was moved, take both again on a stand.' };
    case 'another-distance': return { message: `The piece is ${(100 * Math.abs(refusal.scale - 1)).toFixed(1)} % ${refusal.scale > 1 ? 'larger' : 'smaller'} on the short-wave photograph: it was taken from another distance.`, next: 'Take both from the same place: the distance changes how much light reaches the camera.' };
    case 'no-marks': return { message: 'No stones are marked.', next: 'Mark the stones on the piece’s map first, or let the program look for bright places.' };
  }
}
