import type { CalibrationStandard } from './standard.ts';

/** What a published shift of a shift standard may be off, cm-1 (standard deviations in ASTM E1840 are mostly below this; from memory). */
const SHIFT_UNCERTAINTY_CM1 = 0.5;
const STRONG = 3;

/** Shifts in cm-1 and, first in the pair, the strongest band. */
const shifts = (id: string, name: string, strongest: number, positions: readonly number[]): CalibrationStandard => ({
  id, name, unit: 'raman-shift', shape: 'emission', source: 'ASTM E1840-96 (2014)', fromMemory: false,
  lines: positions.map((position) => ({ position, uncertainty: SHIFT_UNCERTAINTY_CM1, strength: position === strongest ? STRONG : 1 })),
});

/** Materials whose Raman shifts are standardised, ASTM E1840. */
export const RAMAN_STANDARDS: readonly CalibrationStandard[] = [
  shifts('polystyrene-raman', 'polystyrene (Raman)', 1001.4, [620.9, 795.8, 1001.4, 1031.8, 1155.3, 1450.5, 1583.1, 1602.3, 2852.4, 2904.5, 3054.3]),
  shifts('cyclohexane-raman', 'cyclohexane (Raman)', 801.3, [384.1, 426.4, 801.3, 1028.3, 1157.6, 1266.4, 1444.4, 2664.4, 2852.9, 2923.8, 2938.3]),
  shifts('naphthalene-raman', 'naphthalene (Raman)', 1382.2, [513.8, 763.8, 1021.6, 1147.2, 1382.2, 1464.5, 1576.6, 3056.4]),
  shifts('sulfur-raman', 'sulfur (Raman)', 219.1, [26.9, 50.0, 85.1, 153.8, 219.1, 473.2]),
  shifts('benzonitrile-raman', 'benzonitrile (Raman)', 1000.7, [460.9, 548.5, 751.3, 767.1, 1000.7, 1026.6, 1177.9, 1192.6, 1598.9, 2229.4, 3072.3]),
  shifts('toluene-acetonitrile-raman', 'toluene and acetonitrile, equal parts (Raman)', 1003.6, [378.5, 521.7, 786.5, 919.0, 1003.6, 1030.6, 1211.4, 1605.1, 2253.7, 2292.6, 2940.8, 3057.1]),
  shifts('acetamidophenol-raman', '4-acetamidophenol (Raman)', 834.5, [
    213.3, 329.2, 390.9, 465.1, 504.0, 651.6, 710.8, 797.2, 834.5, 857.9, 968.7, 1105.5, 1168.5, 1236.8, 1278.5, 1323.9, 1371.5, 1515.1, 1561.6, 1648.4, 2931.1, 3064.6, 3102.4, 3326.6,
  ]),
  shifts('bis-methylstyryl-benzene-raman', '1,4-bis(2-methylstyryl)benzene (Raman)', 1593.1, [456.0, 642.4, 841.6, 950.1, 978.0, 1101.1, 1177.7, 1290.7, 1316.9, 1334.5, 1555.2, 1593.1, 1627.9]),
];
