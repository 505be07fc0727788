import type { FigureAxis } from '../../app/figure/figure-model.ts';
import type { MethodId } from '../../app/domain/method.ts';

/** The axes as the switch names them. */
export const AXIS_WORDS: Readonly<Record<FigureAxis, string>> = { nm: 'nm', 'nm-vacuum': 'nm vac', 'cm-1': 'cm⁻¹', ev: 'eV', 'raman-shift': 'shift' };

/** The axis people read this method on, as far as the curve allows it. */
export function usualAxis(method: MethodId, possible: readonly FigureAxis[]): FigureAxis | null {
  const wanted: FigureAxis = method === 'raman' ? 'raman-shift' : method === 'infrared' ? 'cm-1' : 'nm';
  return possible.includes(wanted) ? wanted : possible[0] ?? null;
}
