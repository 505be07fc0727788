import type { FindingFact } from '../../domain/finding.ts';
import type { Observation } from '../../domain/observation.ts';
import { colourlessOnly } from './context.ts';
import type { ObservationContext } from './context.ts';

type Of<M extends Observation['method']> = Extract<Observation, { method: M }>;

/** Specific gravity of diamond, and how far a reading may be off: at least 0.02, or twice its uncertainty (judgement on 3.51–3.53 of gem tables). */
const DIAMOND_SG = 3.515;
const SG_TOLERANCE = 0.02;
/** Farther than this, and four uncertainties, no inclusion explains it (judgement). */
const SG_FAR = 0.1;

export function magnetFindings({ response }: Of<'magnet'>): FindingFact[] {
  const base = { method: 'magnet', source: 'Johnson & Myagkaya, Gems & Gemology Lab Notes, Spring 2017, citing Rossman & Kirschvink 1984' } as const;
  if (response === 'none') return [{ ...base, code: 'magnet:none', statement: 'No response to a strong magnet.', strength: 'neutral', supports: 'none', caution: 'many HPHT-grown stones do not respond' }];
  return [{ ...base, code: `magnet:${response}`, statement: `${response === 'clear' ? 'Clear' : 'Weak'} response to a strong magnet.`, strength: response === 'clear' ? 'strong' : 'supporting', supports: 'grown-hpht', caution: 'natural magnetic diamonds exist, though extremely rare; steel of tweezers can stick' }];
}

export function thermalProbeFindings({ reading }: Of<'thermal-probe'>): FindingFact[] {
  const base = { method: 'thermal-probe', source: 'Burgemeister et al. 1979; common practice' } as const;
  return reading === 'diamond-like'
    ? [{ ...base, code: 'thermal:diamond-like', statement: 'Thermal probe: conducts heat like diamond.', strength: 'supporting', supports: 'diamond', caution: 'moissanite can pass; natural and laboratory-grown diamond read alike' }]
    : [{ ...base, code: 'thermal:not-diamond-like', statement: 'Thermal probe: does not conduct heat like diamond.', strength: 'supporting', supports: 'not-diamond', caution: 'size, mount, temperature and angle of the probe matter' }];
}

export function electricalFindings({ reading }: Of<'electrical-conductivity'>): FindingFact[] {
  const base = { method: 'electrical-conductivity', strength: 'neutral', supports: 'none', source: 'Burgemeister et al. 1979; common practice' } as const;
  return reading === 'conducts'
    ? [{ ...base, code: 'electrical:conducts', statement: 'Conducts electricity.', caution: 'type IIb diamond, natural or grown, or moissanite' }]
    : [{ ...base, code: 'electrical:does-not-conduct', statement: 'Does not conduct electricity.', caution: 'excludes neither moissanite nor type IIb' }];
}

export function specificGravityFindings({ value, uncertainty }: Of<'specific-gravity'>): FindingFact[] {
  const off = Math.abs(value - DIAMOND_SG);
  const reading = `Specific gravity ${value.toFixed(3)} ± ${uncertainty.toFixed(3)}`;
  const base = { method: 'specific-gravity', source: 'gem tables 3.51–3.53 for diamond; limits are judgement' } as const;
  if (off <= Math.max(SG_TOLERANCE, 2 * uncertainty)) {
    return [{ ...base, code: 'gravity:as-diamond', statement: `${reading}: as diamond.`, strength: 'supporting', supports: 'diamond', caution: 'topaz has the same' }];
  }
  const far = off > Math.max(SG_FAR, 4 * uncertainty);
  return [{ ...base, code: 'gravity:not-diamond', statement: `${reading}: not that of diamond.`, strength: far ? 'strong' : 'supporting', supports: 'not-diamond', caution: 'air bubbles and small weights mislead; weigh again' }];
}

/** Refractive index of diamond at 589.3 nm (Peter 1923, from memory), and how far reflectivity may be off (judgement). */
const DIAMOND_INDEX = 2.417;
const INDEX_TOLERANCE = 0.05;
/** The highest index a common refractometer shows: that of its contact liquid (common practice, no source). */
const REFRACTOMETER_TOP = 1.81;

/** A refractometer can only exclude diamond; reflectivity can be like it. */
export function refractiveIndexFindings({ by, reading, value, uncertainty }: Of<'refractive-index'>): FindingFact[] {
  const base = { method: 'refractive-index', source: 'Peter 1923 (2.417 at 589.3 nm, from memory); limits are judgement' } as const;
  if (reading === 'over-scale' || value === undefined) {
    return [{ ...base, code: 'index:over-scale', statement: 'Refractive index above the scale of the refractometer.', strength: 'neutral', supports: 'none', caution: 'diamond is, and so are moissanite, cubic zirconia and other imitations' }];
  }
  const words = `${by === 'reflectivity' ? 'Refractive index by reflectivity' : 'Refractive index'} ${value.toFixed(3)}${uncertainty === undefined ? '' : ` ± ${uncertainty.toFixed(3)}`}`;
  if (Math.abs(value - DIAMOND_INDEX) <= Math.max(INDEX_TOLERANCE, 2 * (uncertainty ?? 0))) {
    return [{ ...base, code: 'index:as-diamond', statement: `${words}: as diamond.`, strength: 'supporting', supports: 'diamond', caution: 'strontium titanate and oxidised moissanite reflect alike' }];
  }
  const proven = by === 'refractometer' && value <= REFRACTOMETER_TOP;
  return [{ ...base, code: 'index:not-diamond', statement: `${words}: not that of diamond.`, strength: proven ? 'strong' : 'supporting', supports: 'not-diamond', caution: by === 'reflectivity' ? 'a scratched, greasy or coated facet reads low' : 'a shadow edge of the liquid itself lies near the top of the scale' }];
}

export function ultravioletTransmissionFindings({ reading }: Of<'ultraviolet-transmission'>, context: ObservationContext): FindingFact[] {
  const base = { method: 'ultraviolet-transmission', source: 'Ramanathan, Proc. Indian Acad. Sci. (1946)' } as const;
  if (reading === 'opaque') {
    return [colourlessOnly({ ...base, code: 'ultraviolet:opaque', statement: 'Opaque at 254 nm, as type I diamond.', strength: 'supporting', supports: 'natural', caution: 'screening only: imitations, a blocked beam and isolated nitrogen are opaque too' }, context)];
  }
  return reading === 'transparent'
    ? [{ ...base, code: 'ultraviolet:transparent', statement: 'Transparent at 254 nm, as type II diamond.', strength: 'neutral', supports: 'none', caution: 'refer: natural type IIa, laboratory-grown and treated stones all look the same' }]
    : [{ ...base, code: 'ultraviolet:between', statement: 'Partly transparent at 254 nm.', strength: 'neutral', supports: 'none', caution: 'low nitrogen, pure type IaB, a thin stone, or stray light' }];
}
