import type { Input } from '../../app/contract/index.ts';
import { parseCarat, parseGram } from '../../app/domain/weight.ts';
import { err, ok, type Result } from '../../app/result.ts';
import { LINE_NAMES, type CustodyAction, type Line } from './custody-actions.ts';

/** What is typed on a custody sheet. */
export type CustodyDraft = { readonly outside: boolean; readonly lines: Readonly<Partial<Record<Line, string>>> };

const MISSING: Readonly<Partial<Record<Line, string>>> = { place: 'Write where it is put now.', to: 'Write who takes it.', seal: 'Write the number of the seal.', weight: 'Write what the balance shows.' };

export type CustodyEntryInput = Omit<Input<'custody.append'>, 'itemId' | 'photographs'>;

/** The entry that the sheet asks for, or a sentence beside each line that can't stand. `weightUnit` null: nothing is weighed. */
export function custodyInput(action: CustodyAction, draft: CustodyDraft, weightUnit: 'ct' | 'g' | null): Result<CustodyEntryInput, Readonly<Record<string, string>>> {
  const text = (line: Line): string => (action.asks.includes(line) ? draft.lines[line]?.trim() ?? '' : '');
  const faults: Record<string, string> = {};
  for (const line of action.needs) if (text(line) === '') faults[line] = MISSING[line] ?? `${LINE_NAMES[line]} must be written.`;
  const outside = action.event === 'handed-over' && draft.outside;
  if (outside && text('dueBack') === '') faults['dueBack'] = 'Write by which day it is expected back: the bench counts what is late.';
  const typed = weightUnit === null ? '' : text('weight');
  const weight = typed === '' ? null : (weightUnit === 'g' ? parseGram : parseCarat)(typed);
  if (weight !== null && !weight.ok) faults['weight'] = weight.error;
  if (Object.keys(faults).length > 0) return err(faults);
  const left: readonly Line[] = ['weight', ...(outside ? ['place' as const] : ['dueBack' as const])];
  const written = Object.fromEntries(action.asks.filter((line) => !left.includes(line) && text(line) !== '').map((line) => [line, text(line)]));
  return ok({ event: action.event, ...written, ...(outside && { outside: true }), ...(weight?.ok && { weight: weight.value }) });
}
