import type { DiamondRamanResult } from '../../app/spectra/analysis.ts';

/** What the diamond check says about a curve, in one sentence. */
export function diamondSentence(check: DiamondRamanResult | null, laserNm: number | null): string {
  if (check === null) return laserNm === null ? 'No laser wavelength is stated, so the place of the diamond line is not known.' : 'The diamond line lies outside this curve.';
  const expected = check.expectedNm.toFixed(2);
  switch (check.state) {
    case 'present': return `Diamond line present: found at ${check.foundNm?.toFixed(2) ?? '–'} nm${check.shiftCm1 === null ? '' : `, shift ${check.shiftCm1.toFixed(1)} cm⁻¹`}; expected at ${expected} nm for this laser.`;
    case 'absent': return `Diamond line absent: nothing stands at ${expected} nm, where it belongs for this laser.`;
    case 'masked': return `Diamond line masked: it can’t be judged at ${expected} nm, where it belongs for this laser; the check has not passed.`;
  }
}
