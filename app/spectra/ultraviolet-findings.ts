import type { FindingFact } from '../domain/finding.ts';
import type { FindingInput } from './finding-input.ts';
import { TRANSPARENCY } from './ultraviolet.ts';

const SOURCE = 'Ramanathan, Proc. Indian Acad. Sci. (1946), reporting Robertson, Fox & Martin 1934; thresholds are judgement';

/** The short-wave reading with its screening-only meaning. */
export function ultravioletFindings(input: FindingInput): FindingFact[] {
  const reading = input.ultraviolet;
  if (!reading) return [];
  const method = 'ultraviolet-transmission';
  const facts: FindingFact[] = [];
  const edge = reading.edgeNm === null ? '' : `, absorption edge at ${reading.edgeNm.toFixed(0)} nm`;
  if (reading.ratio === null) {
    if (reading.edgeNm !== null) facts.push({ code: 'ultraviolet:edge', statement: `Absorption edge at ${reading.edgeNm.toFixed(0)} nm; 254 nm was not covered.`, strength: 'neutral', supports: 'none', method, caution: 'screening only', source: SOURCE });
    return facts;
  }
  const ratio = `Transmission at 254 nm against the visible ${Math.max(0, reading.ratio).toFixed(3)} ± ${(reading.ratioError ?? 0).toFixed(3)}${edge}`;
  // The noise may not decide: a ratio within three standard deviations of the limit stays open.
  const slack = 3 * (reading.ratioError ?? 0);
  if (reading.ratio + slack < TRANSPARENCY.opaqueBelow) {
    facts.push({
      code: 'ultraviolet:opaque', statement: `${ratio}: opaque in the short-wave ultraviolet, as type I diamond is.`, strength: 'supporting', supports: 'natural', method,
      caution: 'screening only, colourless stones only: isolated nitrogen in grown yellow stones, and most imitations, are opaque too', source: SOURCE,
    });
  } else if (reading.ratio - slack > TRANSPARENCY.transparentAbove) {
    facts.push({
      code: 'ultraviolet:transparent', statement: `${ratio}: transparent in the short-wave ultraviolet, as type II diamond is.`, strength: 'neutral', supports: 'none', method,
      caution: 'refer: natural type IIa, laboratory-grown and HPHT-treated stones all look the same; light past the stone does too', source: SOURCE,
    });
  } else {
    facts.push({ code: 'ultraviolet:between', statement: `${ratio}: between opaque and transparent.`, strength: 'neutral', supports: 'none', method, caution: 'low nitrogen, pure type IaB, a thin stone, or stray light', source: SOURCE });
  }
  return facts;
}
