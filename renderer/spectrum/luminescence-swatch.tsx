import type { LuminescenceColourResult } from '../../app/colour/luminescence-colour.ts';

/** The colour of the luminescence as the eye would see it, in a patch and in words. */
export function LuminescenceSwatch({ colour }: { readonly colour: LuminescenceColourResult }) {
  const { word, x, y, dominantNm, srgb, inGamut } = colour;
  const where = `CIE 1931 x ${x.toFixed(3)}, y ${y.toFixed(3)}${dominantNm === null ? '' : `, dominant ${dominantNm.toFixed(0)} nm`}`;
  return (
    <p className="luminescence" title={inGamut ? 'Computed from the curve as the instrument recorded it.' : 'Computed from the curve as the instrument recorded it. A screen can’t show a colour this pure: the patch is paler.'}>
      <span className="luminescence-patch" style={{ background: srgb }} aria-hidden="true" />
      <span>Luminescence: {word}</span><span className="quiet mono">{where}</span>
    </p>
  );
}
