import type { FindingFact } from '../domain/finding.ts';
import type { FindingInput } from './finding-input.ts';
import { threeFigures } from './number-words.ts';

const RAMAN_SOURCE = 'Solin & Ramdas, Phys. Rev. B 1 (1970) 1687; position 1332.4 cm⁻¹ from memory';
const SIMULANT_SOURCE = 'Raman lines of minerals, handbook values from memory';

/** Is it diamond? From the Raman line, or from the lines of an imitation. */
export function identityFindings(input: FindingInput): FindingFact[] {
  const { parameters: { method, laserNm }, diamondRaman, simulant } = input;
  const facts: FindingFact[] = [];
  if (simulant) {
    const lines = simulant.found.map((found) => found.shiftCm1.toFixed(1)).join(', ');
    facts.push({
      code: `simulant:${simulant.simulant.id}`, statement: `Raman ${simulant.found.length === 1 ? 'line' : 'lines'} at ${lines} cm⁻¹, as of ${simulant.simulant.name}.`,
      strength: simulant.found.length >= 2 ? 'diagnostic' : 'strong', supports: 'not-diamond', method,
      caution: 'a neighbouring stone or the mount in the beam would give the same lines', source: SIMULANT_SOURCE,
    });
  }
  if (!diamondRaman) return facts;
  const { result, reason } = diamondRaman;
  const expectedAt = method === 'raman' ? '1332 cm⁻¹' : `${result.expectedNm.toFixed(2)} nm`;
  const laser = laserNm === undefined ? '' : ` for the ${laserNm} nm laser`;
  if (result.state === 'present') {
    const place = method === 'raman' ? `at ${result.shiftCm1!.toFixed(1)} cm⁻¹` : `at ${result.foundNm!.toFixed(2)} nm (${result.shiftCm1!.toFixed(1)} cm⁻¹${laser})`;
    facts.push({ code: 'diamond-line:present', statement: `The Raman line of diamond is there, ${place}.`, strength: 'diagnostic', supports: 'diamond', method, caution: 'says nothing about origin or treatment', source: RAMAN_SOURCE });
  } else if (result.state === 'absent') {
    const limit = result.detectionLimit === null ? '' : `; a line of height ${threeFigures(result.detectionLimit)} would have been seen`;
    facts.push({
      code: 'diamond-line:absent', statement: `No Raman line of diamond where it is expected (${expectedAt}${laser}${limit}).`,
      strength: method === 'raman' ? 'diagnostic' : 'strong', supports: 'not-diamond', method,
      caution: 'holds only with the right laser wavelength and the stone in focus', source: RAMAN_SOURCE,
    });
  } else {
    const limit = result.detectionLimit === null ? '' : ` Limit of detection: height ${threeFigures(result.detectionLimit)}.`;
    facts.push({
      code: 'diamond-line:masked', statement: `The Raman line of diamond can’t be judged at ${expectedAt}: ${reason}.${limit}`,
      strength: 'neutral', supports: 'none', method, caution: 'neither for nor against diamond; another laser or less light may show it', source: RAMAN_SOURCE,
    });
  }
  return facts;
}
