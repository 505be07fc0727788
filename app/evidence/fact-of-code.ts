import type { FindingFact, Strength } from '../domain/finding.ts';
import { methodId } from '../domain/method.ts';
import type { MethodId } from '../domain/method.ts';
import { opticalCentre } from '../reference/optical-centres.ts';
import { evidenceRowOf } from './evidence-table.ts';

/** The method a code comes from where it is not said; lines of spectra are taken as luminescence. */
const USUAL_METHODS: readonly (readonly [RegExp, MethodId])[] = [
  [/^(diamond-line|simulant):/, 'raman'], [/^(centre|family|centres|ambiguous):/, 'photoluminescence'], [/^band:/, 'absorption'], [/^infrared:/, 'infrared'],
  [/^ultraviolet:/, 'ultraviolet-transmission'], [/^(glow-long:|glow:long)/, 'fluorescence-long-wave'], [/^(glow-short:|glow-both:|glow:)/, 'fluorescence-short-wave'],
  [/^afterglow:/, 'phosphorescence'], [/^pattern:/, 'growth-pattern'], [/^strain:/, 'crossed-polarisers'], [/^magnet:/, 'magnet'], [/^seen:/, 'microscopy'],
  [/^thermal:/, 'thermal-probe'], [/^electrical:/, 'electrical-conductivity'], [/^gravity:/, 'specific-gravity'], [/^index:/, 'refractive-index'],
];

/** The method of a code, or null where it says none. */
export function methodOfCode(code: string): MethodId | null {
  const own = methodId.safeParse(/^examiner:(.+)$/.exec(code)?.[1]);
  return own.success ? own.data : USUAL_METHODS.find(([pattern]) => pattern.test(code))?.[1] ?? null;
}

const LOWER: Readonly<Record<Strength, Strength>> = { diagnostic: 'strong', strong: 'supporting', supporting: 'neutral', neutral: 'neutral' };

/**
 * The finding of a code with the weight its maker gives it: that of its optical centre, else of its row of the evidence table.
 * `weakened` lowers it by one step, as a poor signal does. Null for codes the table does not know.
 */
export function factOfCode(code: string, method: MethodId, weakened = false): FindingFact | null {
  const row = evidenceRowOf(code);
  if (row === undefined) return null;
  const full = (code.startsWith('centre:') ? opticalCentre(code.slice('centre:'.length))?.strength : undefined) ?? (/^(magnet:weak)$/.test(code) ? 'supporting' : row.most);
  const strength = weakened ? LOWER[full] : full;
  return { code, statement: `${row.says.charAt(0).toUpperCase()}${row.says.slice(1)}.`, method, strength, supports: strength === 'neutral' ? 'none' : row.supports, caution: row.caution, source: row.source };
}
