export type InfraredReferenceLine = { readonly id: string; readonly cm1: number; readonly toleranceCm1: number; readonly mostFwhmCm1: number; readonly what: string; readonly source: string };

const MEMORY = 'from memory';
/** Named places of a diamond's infrared curve, cm-1; tolerances for a resolution of 4 cm-1 (judgement). */
export const INFRARED_REFERENCE_LINES: readonly InfraredReferenceLine[] = [
  { id: 'IR-B1175', cm1: 1174, toleranceCm1: 4, mostFwhmCm1: 80, what: 'B aggregates', source: 'Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351' },
  { id: 'IR-A1282', cm1: 1282, toleranceCm1: 4, mostFwhmCm1: 80, what: 'A aggregates', source: 'Boyd et al. 1994 (from memory)' },
  { id: 'IR-C1130', cm1: 1130, toleranceCm1: 4, mostFwhmCm1: 80, what: 'isolated nitrogen', source: 'Collins & Woods 1982; Kiflawi et al. 1994 (from memory)' },
  { id: 'IR-C1344', cm1: 1344, toleranceCm1: 2, mostFwhmCm1: 12, what: 'isolated nitrogen, local mode', source: 'Collins & Woods 1982' },
  { id: 'IR-1332', cm1: 1332, toleranceCm1: 2, mostFwhmCm1: 16, what: 'N⁺ or B aggregates', source: 'Lawson et al. 1998 (from memory)' },
  { id: 'IR-PLATELET', cm1: 1367, toleranceCm1: 12, mostFwhmCm1: 35, what: 'platelets', source: 'Speich et al., Contrib. Mineral. Petrol. 173 (2018) 39' },
  { id: 'IR-1405', cm1: 1405, toleranceCm1: 2, mostFwhmCm1: 14, what: 'hydrogen (N3VH)', source: 'Day et al., Diamond Relat. Mater. 2024' },
  { id: 'IR-H1A', cm1: 1450, toleranceCm1: 2, mostFwhmCm1: 14, what: 'H1a, radiation and annealing', source: 'Kiflawi, Mainwood, Kanda, Fisher, Phys. Rev. B 54 (1996) 16719' },
  { id: 'IR-3107', cm1: 3107, toleranceCm1: 2.5, mostFwhmCm1: 14, what: 'hydrogen (N3VH)', source: 'Day et al., Diamond Relat. Mater. 2024' },
  { id: 'IR-3123', cm1: 3123, toleranceCm1: 2.5, mostFwhmCm1: 14, what: 'NVH⁰, CVD growth', source: 'Fuchs et al., Appl. Phys. Lett. 66 (1995) 177' },
  { id: 'IR-3237', cm1: 3237, toleranceCm1: 2, mostFwhmCm1: 14, what: 'hydrogen', source: MEMORY },
  { id: 'IR-2P1976', cm1: 1973, toleranceCm1: 6, mostFwhmCm1: 45, what: 'diamond lattice, two phonons', source: MEMORY },
  { id: 'IR-2P2030', cm1: 2030, toleranceCm1: 5, mostFwhmCm1: 80, what: 'diamond lattice, two phonons', source: MEMORY },
  { id: 'IR-2P2160', cm1: 2160, toleranceCm1: 5, mostFwhmCm1: 60, what: 'diamond lattice, two phonons', source: MEMORY },
  { id: 'IR-B1290', cm1: 1290, toleranceCm1: 4, mostFwhmCm1: 110, what: 'boron', source: 'Gaillou, Post, Rost, Butler, Am. Mineral. 97 (2012) 1 (from memory)' },
  { id: 'IR-B2802', cm1: 2802, toleranceCm1: 5, mostFwhmCm1: 110, what: 'boron', source: MEMORY },
  { id: 'IR-H1B', cm1: 4935, toleranceCm1: 4, mostFwhmCm1: 30, what: 'H1b, irradiation and annealing', source: 'Collins, Davies, Woods 1986; place from memory' },
  { id: 'IR-H1C', cm1: 5165, toleranceCm1: 4, mostFwhmCm1: 30, what: 'H1c, irradiation and annealing', source: 'Collins, Davies, Woods 1986; place from memory' },
  { id: 'IR-CO2', cm1: 668, toleranceCm1: 2, mostFwhmCm1: 10, what: 'carbon dioxide', source: MEMORY },
];
