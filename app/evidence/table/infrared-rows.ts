import { evidenceRow } from './evidence-row.ts';
import type { EvidenceRow } from './evidence-row.ts';

const AGGREGATES = 'Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351';
const ANNEALED = 'Collins & Stanley, J. Phys. D 18 (1985) 2537';
const LAYER = 'Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019';
const HYDROGEN = 'Day et al., Diamond Relat. Mater. 2024; Heavily irradiated CVD synthetic diamond, Gems & Gemology Lab Notes, Fall 2014';
const EDGE = 'Ramanathan, Proc. Indian Acad. Sci. (1946)';

/** Infrared type and short-wave transmission. Grades in the order natural untreated, natural treated, CVD as grown, CVD treated, HPHT-grown, not diamond. */
export const INFRARED_ROWS: readonly EvidenceRow[] = [
  { id: 'aggregates', codes: ['infrared:type-IaAB', 'infrared:type-IaB'], says: 'nitrogen aggregated to A and B', grades: '+++ ++ --- -- -- X', supports: 'natural', most: 'strong', source: AGGREGATES, cellSources: { 'hpht-grown': ANNEALED, 'cvd-treated': ANNEALED, 'cvd-as-grown': LAYER }, caution: 'a CVD layer may sit on a natural core' } as const,
  { id: 'aggregates-a', codes: ['infrared:type-IaA'], says: 'nitrogen aggregated to A', grades: '+++ ++ -- -- -- X', supports: 'natural', most: 'strong', source: AGGREGATES, cellSources: { 'hpht-grown': ANNEALED, 'cvd-treated': ANNEALED, 'cvd-as-grown': LAYER }, caution: 'extreme annealing makes A aggregates in grown stones; a CVD layer may sit on a natural core' } as const,
  { id: 'platelets', codes: ['infrared:platelet'], says: 'platelets', grades: '+++ ++ --- --- --- X', supports: 'natural', most: 'strong', source: 'Speich et al., Contrib. Mineral. Petrol. 173 (2018) 39', caution: 'counts with B aggregates; a CVD layer may sit on a natural core' } as const,
  { id: 'isolated-nitrogen', codes: ['infrared:type-Ib'], says: 'isolated nitrogen only', grades: '+ + + + ++ X', supports: 'none', most: 'neutral', source: 'LPHT-annealed pink CVD synthetic diamonds, Gems & Gemology Lab Notes, Summer 2015; Wang & Poon, Gems & Gemology, Fall 2018', caution: 'natural, CVD-grown and HPHT-grown stones can be type Ib' } as const,
  { id: 'type-iia', codes: ['infrared:type-IIa'], says: 'neither nitrogen nor boron', grades: '0 0 + + + X', supports: 'none', most: 'neutral', source: 'Wang et al., Gems & Gemology 48 (2012) 80; D’Haenens-Johansson et al., Gems & Gemology 51 (2015)', caution: 'one natural diamond in fifty, and nearly every colourless grown one' } as const,
  { id: 'boron-alone', codes: ['infrared:type-IIb'], says: 'boron, no nitrogen', grades: '- - 0 0 ++ -', supports: 'none', most: 'neutral', source: 'Natural near-colorless type IIb diamond, Gems & Gemology GNI, Spring 2022', caution: 'usual in colourless HPHT-grown stones, rare in natural ones' } as const,
  { id: 'boron-with-nitrogen', codes: ['infrared:boron'], says: 'boron beside aggregated nitrogen', grades: '-- - 0 0 - X', supports: 'none', most: 'neutral', source: LAYER, caution: 'the sign of a grown layer on a natural core; grease absorbs nearby' } as const,
  { id: 'cvd-3123', codes: ['infrared:3123'], says: '3123 cm⁻¹ line', grades: '-- -- +++ - -- X', supports: 'grown-cvd', most: 'strong', source: 'Fuchs et al., Appl. Phys. Lett. 66 (1995) 177; Heavily irradiated CVD synthetic diamond, Gems & Gemology Lab Notes, Fall 2014', caution: 'removed by annealing: absence says nothing' } as const,
  { id: 'hydrogen-3107', codes: ['infrared:3107'], says: '3107 cm⁻¹ line beside aggregated nitrogen', grades: '++ + -- 0 0 X', supports: 'natural', most: 'supporting', source: HYDROGEN, caution: 'forms in grown stones on HPHT annealing' } as const,
  { id: 'type-open', codes: ['infrared:type-not-determined'], says: 'type not determined', grades: '0 0 0 0 0 0', supports: 'none', most: 'neutral', source: 'judgement', caution: 'no information' } as const,
  { id: 'opaque-254', codes: ['ultraviolet:opaque'], says: 'opaque at 254 nm', grades: '++ + - - - 0', supports: 'natural', most: 'supporting', source: EDGE, caution: 'screening, colourless stones only: imitations, a blocked beam and isolated nitrogen are opaque too' } as const,
  { id: 'transparent-254', codes: ['ultraviolet:transparent'], says: 'transparent at 254 nm', grades: '0 + + + + 0', supports: 'none', most: 'neutral', source: EDGE, caution: 'natural type IIa, grown and treated stones look the same' } as const,
  { id: 'between-254', codes: ['ultraviolet:between', 'ultraviolet:edge'], says: 'transmission at 254 nm not decided', grades: '0 0 0 0 0 0', supports: 'none', most: 'neutral', source: EDGE, caution: 'low nitrogen, pure type IaB, a thin stone, or stray light' } as const,
].map(evidenceRow);
