import { err, ok, type Result } from '../result.ts';

/** Carat weight as an integer of 0.0001 ct (1 ct = 200 mg exactly, 4th CGPM 1907). Never a float. */
export type CaratUnits = number & { readonly __unit: '0.0001 ct' };
/** Gram weight as an integer of 0.00001 g. */
export type GramUnits = number & { readonly __unit: '0.00001 g' };

export const caratUnits = (value: number): CaratUnits => value as CaratUnits;
export const gramUnits = (value: number): GramUnits => value as GramUnits;

/** Largest weight the house accepts: 100 kg, far above any submission, far below 2^53. */
const MAX_UNITS = 5_000_000_000;

function parseUnits(text: string, decimals: number, unitName: string): Result<number, string> {
  const cleaned = text.trim().replace(/\s*(ct|carats?|g|grams?)\.?$/i, '').trim();
  const match = /^(\d{1,9})(?:[.,](\d+))?$/.exec(cleaned);
  if (!match) return err(`“${text.trim()}” is not a weight in ${unitName}: write digits with a decimal point, for instance 1.0234.`);
  const fraction = match[2] ?? '';
  if (fraction.length > decimals) return err(`Give at most ${decimals} decimals of ${unitName}; a balance that shows more must be rounded by a person.`);
  const units = Number(match[1]) * 10 ** decimals + Number(fraction.padEnd(decimals, '0') || '0');
  if (units > MAX_UNITS) return err(`${cleaned} ${unitName} is more than this casebook can hold for one item.`);
  return ok(units);
}

/** Text as typed ("1.02", "1,02 ct") to integer units; works on the digits, never through a float. */
export function parseCarat(text: string): Result<CaratUnits, string> {
  const r = parseUnits(text, 4, 'carat');
  return r.ok ? ok(caratUnits(r.value)) : r;
}

export function parseGram(text: string): Result<GramUnits, string> {
  const r = parseUnits(text, 5, 'gram');
  return r.ok ? ok(gramUnits(r.value)) : r;
}

function formatUnits(units: number, decimals: number, atLeast: number): string {
  const digits = String(Math.abs(units)).padStart(decimals + 1, '0');
  const whole = digits.slice(0, -decimals);
  let fraction = digits.slice(-decimals);
  while (fraction.length > atLeast && fraction.endsWith('0')) fraction = fraction.slice(0, -1);
  return `${units < 0 ? '−' : ''}${whole}.${fraction}`;
}

/** "0.412" from 4120; at least two decimals, or as many as asked for, no trailing zero beyond. */
export const formatCarat = (units: number, atLeast = 2): string => formatUnits(units, 4, atLeast);
export const formatGram = (units: number, atLeast = 2): string => formatUnits(units, 5, atLeast);

/** Grams to carats: 1 ct = 0.2 g, so 0.00001 g = 0.00005 ct; halves round away from zero. */
export const gramsToCarats = (units: GramUnits): CaratUnits => caratUnits(Math.sign(units) * Math.round(Math.abs(units) / 2));
