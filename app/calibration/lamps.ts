import type { LampLine } from './lamp-lines.ts';
import { ARGON_LINES, MERCURY_LINES, NEON_LINES } from './lamp-lines.ts';
import type { CalibrationStandard, ReferenceLine } from './standard.ts';

/** Of the tabulated air wavelengths (Sansonetti et al. for mercury; the same is taken for neon and argon). */
const LAMP_UNCERTAINTY_NM = 0.0001;
const SOURCE = 'NIST Atomic Spectra Database; mercury: Sansonetti, Salit & Reader, Appl. Opt. 35 (1996) 74';
/** The resonance line absorbs itself and hardly reaches a silicon detector: it counts as weak whatever the table says. */
const RESONANCE_NM = 253.6521;
const RESONANCE_STRENGTH = 1000;
/** Argon in a mercury lamp shines weakly beside the mercury. */
const STARTING_GAS_SHARE = 0.2;

const linesOf = (rows: readonly LampLine[], share = 1): ReferenceLine[] =>
  rows.map(([position, , intensity]) => ({ position, uncertainty: LAMP_UNCERTAINTY_NM, strength: (position === RESONANCE_NM ? RESONANCE_STRENGTH : intensity) * share }));

const lamp = (id: string, name: string, lines: ReferenceLine[]): CalibrationStandard =>
  ({ id, name, unit: 'nm', shape: 'emission', source: SOURCE, fromMemory: false, lines: lines.sort((a, b) => a.position - b.position) });

/** Lamps of a bench. */
export const LAMPS: readonly CalibrationStandard[] = [
  lamp('mercury', 'mercury lamp', linesOf(MERCURY_LINES)),
  lamp('mercury-argon', 'mercury–argon lamp', [...linesOf(MERCURY_LINES), ...linesOf(ARGON_LINES, STARTING_GAS_SHARE)]),
  lamp('argon', 'argon lamp', linesOf(ARGON_LINES)),
  lamp('neon', 'neon lamp', linesOf(NEON_LINES)),
];
