import type { FindingFact } from '../domain/finding.ts';
import type { DecayStone } from './decay-result.ts';

/** "8.2 ± 0.3 s" */
export const lifetimeText = ({ lifetime, lifetimeError }: { readonly lifetime: number; readonly lifetimeError: number }): string =>
  `${lifetime.toPrecision(2)} ± ${Math.max(lifetimeError, 10 ** Math.floor(Math.log10(lifetime) - 2)).toPrecision(1)} s`;

/** What the frames say of one stone's after-glow. It carries no weight: the examiner's own observation of colour and length does. */
export function decayFindings({ points, fit, colour, seenUntil }: DecayStone): FindingFact[] {
  const base = { method: 'phosphorescence', strength: 'neutral', supports: 'none', source: 'measured on photographs; least squares' } as const;
  if (seenUntil === null) return [{ ...base, code: 'afterglow:none-measured', statement: `No after-glow above the stray light in ${points.length} photographs from ${points[0]?.seconds ?? 0} s on.`, caution: 'a camera sees less than an eye that is used to the dark' }];
  const hue = colour === null ? 'too bright at first for a colour' : `${colour.word}${colour.dominantNm === null ? '' : ` (dominant ${Math.round(colour.dominantNm)} nm)`}`;
  const lifetimes = fit === null ? 'no lifetime' : fit.terms.length === 1 ? `lifetime ${lifetimeText(fit.terms[0]!)}` : `lifetimes ${fit.terms.map(lifetimeText).join(' and ')}`;
  return [{
    ...base, code: 'afterglow:measured', statement: `After-glow measured on ${points.length} photographs: ${hue}, ${lifetimes}, seen until ${seenUntil} s.`,
    caution: 'lifetimes depend on lamp, time of excitation and temperature; write down what the eye sees as well',
  }];
}
