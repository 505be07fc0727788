const STEPS = [1, 2, 5] as const;

export type ScaleBar = { readonly millimetres: number; readonly length: number; readonly label: string };

/** The longest bar of 1, 2 or 5 times a power of ten millimetres that is no longer than `most`; `perMillimetre` and lengths in the same unit. */
export function scaleBar(perMillimetre: number, most: number): ScaleBar {
  const longest = most / perMillimetre;
  const decade = 10 ** Math.floor(Math.log10(longest));
  const step = STEPS.findLast((one) => one * decade <= longest) ?? 1;
  const millimetres = Number((step * decade).toPrecision(1));
  return { millimetres, length: millimetres * perMillimetre, label: millimetres < 0.01 ? `${Number((millimetres * 1000).toPrecision(1))} µm` : `${millimetres} mm` };
}
