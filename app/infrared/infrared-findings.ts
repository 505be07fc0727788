import type { FindingFact } from '../domain/finding.ts';
import type { FindingInput } from '../spectra/finding-input.ts';
import { threeFigures } from '../spectra/number-words.ts';
import type { InfraredReading } from './infrared-reading.ts';

/** Aggregated nitrogen above this speaks strongly for natural growth, ppm (judgement on Boyd et al. 1995 and annealing studies). */
const STRONG_AGGREGATES_PPM = 10;
const method = 'infrared';

const ppm = (value: number, error: number): string => `${value.toFixed(value >= 10 ? 0 : 1)} ± ${error.toFixed(error >= 10 ? 0 : 1)} ppm`;

function typeFinding(reading: InfraredReading): FindingFact {
  const { type, nitrogenPpm: n, uncertaintyPpm: u, detectionLimitPpm: limit, aggregationPercent } = reading.result;
  const base = { method, source: 'Boyd, Kiflawi, Woods, Phil. Mag. B 72 (1995) 351; Boyd et al. 1994 (from memory)' } as const;
  switch (type) {
    case 'IaA': case 'IaB': case 'IaAB': {
      const total = n.A + n.B;
      const error = Math.hypot(u.A, u.B);
      const strong = total - error > STRONG_AGGREGATES_PPM;
      return {
        ...base, code: `infrared:type-${type}`,
        statement: `Type ${type}: aggregated nitrogen ${ppm(total, error)} (A ${ppm(n.A, u.A)}, B ${ppm(n.B, u.B)}${aggregationPercent === null ? '' : `; ${aggregationPercent.toFixed(0)} % as B`}).`,
        strength: strong ? 'strong' : 'supporting', supports: 'natural', caution: 'extreme annealing makes A aggregates in grown stones; a CVD layer may sit on a natural core',
      };
    }
    case 'Ib': return { ...base, code: 'infrared:type-Ib', statement: `Type Ib: isolated nitrogen ${ppm(n.C, u.C)}.`, strength: 'neutral', supports: 'none', caution: 'natural, CVD-grown and HPHT-grown stones can be type Ib' };
    case 'IIb': return { ...base, code: 'infrared:type-IIb', statement: `Type IIb: boron ${threeFigures(reading.result.boronPpm ?? 0)} ppm (uncompensated, indicative, ± 30 % or more), nitrogen below ${limit.toFixed(0)} ppm.`, strength: 'neutral', supports: 'none', caution: 'usual in colourless HPHT-grown stones, rare in natural ones; in a blue stone it says nothing of origin' };
    case 'IIa': return { ...base, code: 'infrared:type-IIa', statement: `Type IIa: nitrogen below ${limit.toFixed(0)} ppm, no boron seen.`, strength: 'neutral', supports: 'none', caution: 'one natural diamond in fifty, and nearly every colourless grown one: refer to other tests' };
    case 'not-determined': return { ...base, code: 'infrared:type-not-determined', statement: limit < 1000 ? `The type can’t be given: nitrogen below ${limit.toFixed(0)} ppm can’t be told from this curve.` : 'The type can’t be given from this curve.', strength: 'neutral', supports: 'none', caution: 'no information, neither for nor against any origin' };
  }
}

/** Facts of an infrared curve: type, platelets, hydrogen, the CVD line, boron. */
export function infraredFindings(input: FindingInput): FindingFact[] {
  const reading = input.infrared;
  if (!reading) return [];
  const { result, lineErrors } = reading;
  const facts: FindingFact[] = [];
  if (reading.latticeSeen === true) {
    facts.push({ code: 'infrared:lattice', statement: `The two-phonon absorption of diamond is there${reading.pathMm === null ? '' : ` (path ${reading.pathMm.toFixed(2)} mm)`}.`, strength: 'strong', supports: 'diamond', method, caution: 'says nothing about origin or treatment', source: 'Thomas & Tropf 1994 (from memory)' });
  }
  facts.push(typeFinding(reading));
  if (reading.latticeSeen !== true) return facts;
  const aggregated = result.nitrogenPpm.A + result.nitrogenPpm.B;
  const isIa = result.type === 'IaA' || result.type === 'IaB' || result.type === 'IaAB';
  if (result.platelet !== null) {
    facts.push({
      code: 'infrared:platelet', statement: `Platelet peak at ${reading.plateletCm1?.toFixed(1) ?? '1365'} cm⁻¹, ${threeFigures(result.platelet)} ± ${threeFigures(lineErrors.platelet)} cm⁻¹ high.`,
      strength: isIa && result.nitrogenPpm.B > 3 * result.uncertaintyPpm.B ? 'strong' : 'supporting', supports: 'natural', method, caution: 'counts with B aggregates; a CVD layer may sit on a natural core', source: 'Speich et al., Contrib. Mineral. Petrol. 173 (2018) 39',
    });
  }
  if (result.line3107 !== null) {
    facts.push({
      code: 'infrared:3107', statement: `Hydrogen line at 3107 cm⁻¹ (N3VH), ${threeFigures(result.line3107)} ± ${threeFigures(lineErrors.line3107)} cm⁻¹ high.`,
      strength: isIa ? 'supporting' : 'neutral', supports: isIa ? 'natural' : 'none', method, caution: 'forms in grown stones on HPHT annealing; supports natural growth only with A or B aggregates', source: 'Day et al., Diamond Relat. Mater. 2024',
    });
  }
  if (result.line3123 !== null) {
    facts.push({
      code: 'infrared:3123', statement: `Line at 3123 cm⁻¹ (NVH⁰), ${threeFigures(result.line3123)} ± ${threeFigures(lineErrors.line3123)} cm⁻¹ high.`,
      strength: 'strong', supports: 'grown-cvd', method, caution: 'removed by annealing, so absence says nothing', source: 'Heavily irradiated CVD synthetic diamond, Gems & Gemology Lab Notes, Fall 2014; Fuchs et al., Appl. Phys. Lett. 66 (1995) 177',
    });
  }
  if (result.boronPpm !== null && result.type !== 'IIb') {
    facts.push({
      code: 'infrared:boron', statement: `Boron band at 2802 cm⁻¹, about ${threeFigures(result.boronPpm)} ppm uncompensated (indicative, ± 30 % or more), beside ${aggregated.toFixed(0)} ppm of aggregated nitrogen.`,
      strength: 'neutral', supports: 'none', method, caution: 'boron with aggregated nitrogen is most unusual in one crystal: suspect a grown layer on a natural core, or grease', source: 'Ardon & McElhenny, Gems & Gemology Lab Notes, Spring 2019',
    });
  }
  return facts;
}
