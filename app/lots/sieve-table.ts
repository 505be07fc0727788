import { z } from 'zod';

/** One plate of a sieve set: its number as the trade writes it, and the diameter of its holes in millimetres. */
export const sievePlate = z.strictObject({ plate: z.string().trim().min(1).max(8), mm: z.number().positive().max(20) });
export const sieveTable = z.array(sievePlate).min(2, 'A set has at least two plates.').max(80)
  .refine((plates) => plates.every((one, i) => i === 0 || one.mm > plates[i - 1]!.mm), 'List the plates from the smallest hole to the largest, each larger than the one before.')
  .refine((plates) => new Set(plates.map((one) => one.plate)).size === plates.length, 'Each plate is listed once.');
export type SieveTable = z.infer<typeof sieveTable>;

/** Plates as the trade numbers them. Makers differ by a few hundredths of a millimetre: common practice, no source. */
const NUMBERED = '0000 .80, 000 .90, 00 1.00, 0 1.10, 1 1.15, 1.5 1.20, 2 1.25, 2.5 1.30, 3 1.35, 3.5 1.40, 4 1.45, 4.5 1.50, 5 1.55, 5.5 1.60, 6 1.70, 6.5 1.80, 7 1.90, 7.5 2.00, '
  + '8 2.10, 8.5 2.20, 9 2.30, 9.5 2.40, 10 2.50, 10.5 2.60, 11 2.70, 11.5 2.80, 12 2.90, 12.5 3.00, 13 3.10, 13.5 3.20, 14 3.30, 14.5 3.40, 15 3.50, 15.5 3.60, 16 3.70, 17 3.90, 18 4.10, 19 4.30, 20 4.50';

/** The plates as a person writes them: "6.5 1.80, 7 1.90". Undefined where a part is not a number of a plate and a diameter. */
export function parseSieves(text: string): SieveTable | undefined {
  const parts = text.split(/[;\n]|,(?!\d)/).map((part) => part.trim()).filter((part) => part !== '');
  const plates = parts.map((part) => /^(\S+)\s+(\d*[.,]?\d+)(?:\s*mm)?$/.exec(part));
  if (plates.some((one) => one === null)) return undefined;
  return plates.map((one) => ({ plate: one![1]!, mm: Number(one![2]!.replace(',', '.')) }));
}

export const sievesText = (plates: SieveTable): string => plates.map((one) => `${one.plate} ${one.mm.toFixed(2)}`).join(', ');

export const defaultSieves = (): SieveTable => parseSieves(NUMBERED)!;

/** "+6.5 −11 (1.80 to 2.70 mm)": stones that stay on one plate and fall through the other; null is no plate on that side. */
export function sieveWords(over: string | null, through: string | null, plates: SieveTable): string {
  const mm = (plate: string): string => plates.find((one) => one.plate === plate)?.mm.toFixed(2) ?? '?';
  if (over === null && through === null) return 'not sieved';
  if (over === null) return `−${through} (below ${mm(through!)} mm)`;
  if (through === null) return `+${over} (above ${mm(over)} mm)`;
  return `+${over} −${through} (${mm(over)} to ${mm(through)} mm)`;
}
