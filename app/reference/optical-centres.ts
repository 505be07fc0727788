import type { OpticalCentre } from './optical-centre.ts';
import { GROWN_CENTRES } from './centres-grown.ts';
import { NATURAL_CENTRES } from './centres-natural.ts';
import { NEUTRAL_CENTRES } from './centres-neutral.ts';
import { RADIATION_CENTRES } from './centres-radiation.ts';

/** Version of all reference tables; stored with each analysis. Raise it with every change of a number or a meaning. */
export const TABLES_VERSION = 'culet-tables 1.1.0';

/** The table of optical centres, ascending in wavelength. To add one, put an entry with its source into the file of its kind. */
export const OPTICAL_CENTRES: readonly OpticalCentre[] = [...NATURAL_CENTRES, ...GROWN_CENTRES, ...NEUTRAL_CENTRES, ...RADIATION_CENTRES]
  .sort((a, b) => a.roomNm - b.roomNm);

const BY_ID: ReadonlyMap<string, OpticalCentre> = new Map(OPTICAL_CENTRES.map((centre) => [centre.id, centre]));

/** The centre with this id, if the table has it. */
export const opticalCentre = (id: string): OpticalCentre | undefined => BY_ID.get(id);
