import { colourMatchingAt } from '../../colour/matching-functions.ts';
import { encodeSrgb, linearFromXyz } from '../../colour/srgb.ts';
import type { Photograph } from '../photograph.ts';

/** Where the visible spectrum is summed, nm. */
const SPECTRUM = { from: 380, to: 780, step: 5 } as const;

/**
 * Colour of a birefringent plate between crossed polarisers in light of equal energy: I(λ) = sin²(2θ)·sin²(πΓ/λ), weighed by the CIE 1931
 * observer. Source of the formula: M. Born & E. Wolf, Principles of Optics, 15.4; the colours are those of Michel-Lévy's chart.
 * @param retardation Γ, nm
 * @param angleDegrees θ between the plate's slow axis and the polariser
 * @returns linear sRGB; 1 is the light without polarisers; parts below 0 lie outside the screen's colours
 */
export function interferenceColour(retardation: number, angleDegrees = 45): readonly [number, number, number] {
  const turned = Math.sin(2 * angleDegrees * Math.PI / 180) ** 2;
  let [x, y, z, white] = [0, 0, 0, 0];
  for (let nm: number = SPECTRUM.from; nm <= SPECTRUM.to; nm += SPECTRUM.step) {
    const [xBar, yBar, zBar] = colourMatchingAt(nm);
    const light = turned * Math.sin(Math.PI * retardation / nm) ** 2;
    x += light * xBar; y += light * yBar; z += light * zBar; white += yBar;
  }
  return linearFromXyz([x / white, y / white, z / white]);
}

/** Retardation (nm) and axis (degrees) at a point of the stone, −1 to 1 in both directions, y upwards. */
export type StrainField = (x: number, y: number) => { readonly retardation: number; readonly angleDegrees: number };

/** A round stone with this strain between crossed polarisers, filling a square photograph; black about it. */
export function photographStrain(field: StrainField, side: number): Photograph {
  const data = new Uint8Array(3 * side * side);
  const known = new Map<string, readonly number[]>();
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      const [x, y] = [(2 * i + 1) / side - 1, 1 - (2 * j + 1) / side];
      if (x * x + y * y > 1) continue;
      const { retardation, angleDegrees } = field(x, y);
      // Colours are computed once for each two nanometres and the turning is a factor.
      const key = String(Math.round(retardation / 2));
      const full = known.get(key) ?? interferenceColour(2 * Math.round(retardation / 2));
      known.set(key, full);
      const turned = Math.sin(2 * angleDegrees * Math.PI / 180) ** 2;
      for (let c = 0; c < 3; c++) data[3 * (j * side + i) + c] = Math.round(255 * encodeSrgb(Math.max(0, Math.min(1, turned * full[c]!))));
    }
  }
  return { width: side, height: side, most: 255, data };
}
