import type { HouseSettings } from '../../domain/house-settings.ts';

type ReadingUncertainty = Pick<HouseSettings, 'dimensionUncertaintyMm' | 'readingMm'>;
type Measured = { readonly measurements: string; readonly mounted: boolean };

/** What the uncertainty of written dimensions covers, in the words of the report's data. */
export const DIMENSIONS_COVER = 'one standard deviation of each reading, as the laboratory states it';

/** Standard uncertainty of one reading, mm: that of the gauge, or in a mounting that of a reading there; null where the laboratory states none. */
export function dimensionUncertainty({ mounted }: Pick<Measured, 'mounted'>, settings: ReadingUncertainty): number | null {
  const mm = mounted ? settings.readingMm : settings.dimensionUncertaintyMm;
  return mm === 0 ? null : mm;
}

/** "4.79 – 4.81 × 2.94 mm, each ± 0.02 mm": dimensions as a person wrote them, in millimetres, with what the house states of its readings. */
export function dimensionsText(stone: Measured, settings: ReadingUncertainty): string {
  const text = stone.measurements.trim();
  const uncertainty = dimensionUncertainty(stone, settings);
  return `${/\bmm\b|\dmm\b/.test(text) ? text : `${text} mm`}${uncertainty === null ? '' : `, each ± ${uncertainty} mm`}`;
}
