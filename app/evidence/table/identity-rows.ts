import { evidenceRow } from './evidence-row.ts';
import type { EvidenceRow } from './evidence-row.ts';

const RAMAN = 'Solin & Ramdas, Phys. Rev. B 1 (1970) 1687; Liu, Bursill, Prawer, Beserman, Phys. Rev. B 61 (2000)';
const PROBES = 'Burgemeister et al. 1979 (conductivities); common practice, no source';
const MOISSANITE = 'Nassau, McClure, Elen, Shigley, Gems & Gemology 33 (1997) 260';

/** Is it diamond? Grades in the order natural untreated, natural treated, CVD as grown, CVD treated, HPHT-grown, not diamond. */
export const IDENTITY_ROWS: readonly EvidenceRow[] = [
  { id: 'diamond-line', codes: ['diamond-line:present'], says: 'Raman line of diamond present', grades: '+ + + + + X', supports: 'diamond', most: 'diagnostic', source: RAMAN, caution: 'proves diamond, says nothing of origin' } as const,
  { id: 'diamond-line-absent', codes: ['diamond-line:absent'], says: 'Raman line of diamond absent, good signal', grades: 'X X X X X +++', supports: 'not-diamond', most: 'diagnostic', source: RAMAN, caution: 'strong luminescence can swamp the line' } as const,
  { id: 'diamond-line-masked', codes: ['diamond-line:masked'], says: 'Raman line could not be judged', grades: '0 0 0 0 0 0', supports: 'none', most: 'neutral', source: 'common practice, no source', caution: 'no information' } as const,
  { id: 'simulant-lines', codes: ['simulant:*'], says: 'Raman lines of an imitation', grades: 'X X X X X +++', supports: 'not-diamond', most: 'diagnostic', source: 'Raman lines of minerals, handbook values from memory', caution: 'a neighbouring stone or the mount in the beam gives the same lines' } as const,
  { id: 'lattice', codes: ['infrared:lattice'], says: 'two-phonon absorption of diamond', grades: '+ + + + + X', supports: 'diamond', most: 'strong', source: 'Thomas & Tropf 1994 (from memory)', caution: 'says nothing of origin or treatment' } as const,
  { id: 'thermal-diamond', codes: ['thermal:diamond-like'], says: 'conducts heat like diamond', grades: '+ + + + + 0', supports: 'diamond', most: 'supporting', source: PROBES, cellSources: { 'not-diamond': MOISSANITE }, caution: 'moissanite can pass' } as const,
  { id: 'thermal-other', codes: ['thermal:not-diamond-like'], says: 'does not conduct heat like diamond', grades: '-- -- -- -- -- ++', supports: 'not-diamond', most: 'supporting', source: PROBES, caution: 'size, mount and angle of the probe matter' } as const,
  { id: 'electrical-conducts', codes: ['electrical:conducts'], says: 'conducts electricity', grades: '0 0 0 0 + +', supports: 'none', most: 'neutral', source: PROBES, cellSources: { 'hpht-grown': 'Natural near-colorless type IIb diamond, Gems & Gemology GNI, Spring 2022', 'not-diamond': MOISSANITE }, caution: 'type IIb diamond, natural or grown, or moissanite' } as const,
  { id: 'electrical-none', codes: ['electrical:does-not-conduct'], says: 'does not conduct electricity', grades: '0 0 0 0 0 0', supports: 'none', most: 'neutral', source: PROBES, caution: 'excludes neither moissanite nor type IIb' } as const,
  { id: 'gravity-diamond', codes: ['gravity:as-diamond'], says: 'specific gravity of diamond', grades: '+ + + + + --', supports: 'diamond', most: 'supporting', source: 'gem tables 3.51–3.53; tolerance is judgement', caution: 'topaz has the same' } as const,
  { id: 'gravity-other', codes: ['gravity:not-diamond'], says: 'specific gravity not that of diamond', grades: '-- -- -- -- -- +++', supports: 'not-diamond', most: 'strong', source: 'gem tables 3.51–3.53; tolerance is judgement', caution: 'air bubbles and small weights mislead' } as const,
  { id: 'index-diamond', codes: ['index:as-diamond'], says: 'reflectivity of diamond', grades: '+ + + + + -', supports: 'diamond', most: 'supporting', source: 'Peter 1923 (2.417 at 589.3 nm, from memory)', cellSources: { 'not-diamond': 'Synthetic moissanite with the reflectivity of diamond, J. Gemmology 38(4) (2022) 323' }, caution: 'strontium titanate and oxidised moissanite reflect alike' } as const,
  { id: 'index-other', codes: ['index:not-diamond'], says: 'refractive index not that of diamond', grades: '-- -- -- -- -- +++', supports: 'not-diamond', most: 'strong', source: 'Peter 1923 (2.417 at 589.3 nm, from memory); gem tables of imitations', caution: 'by reflectivity a scratched, greasy or coated facet reads low' } as const,
  { id: 'index-over', codes: ['index:over-scale'], says: 'above the scale of the refractometer', grades: '0 0 0 0 0 0', supports: 'none', most: 'neutral', source: 'common practice, no source', caution: 'so are moissanite, cubic zirconia and other imitations' } as const,
  { id: 'facet-doubling', codes: ['seen:facet-doubling'], says: 'facet edges seen double', grades: '--- --- --- --- --- +++', supports: 'not-diamond', most: 'strong', source: MOISSANITE, caution: 'look along several directions' } as const,
  { id: 'gas-bubbles', codes: ['seen:gas-bubbles'], says: 'gas bubbles', grades: '-- -- -- -- -- +++', supports: 'not-diamond', most: 'strong', source: 'common practice, no source', caution: 'a filled fracture can hold bubbles too' } as const,
].map(evidenceRow);
