import { useAsk } from '../queries.ts';
import { Button } from '../look/button.tsx';
import { Field } from '../look/field.tsx';
import { showDue } from '../look/time.ts';

const MS_PER_DAY = 86_400_000;
const STEPS = [3, 7, 14] as const;

/** Calendar date `days` after `day`, both yyyy-mm-dd. */
export const addDays = (day: string, days: number): string => new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);

/** The date by which the client expects an answer; today is the laboratory's today. */
export function DueField({ value, onChange, error }: { readonly value: string; readonly onChange: (value: string) => void; readonly error: string | undefined }) {
  const today = useAsk('bench.today', {}, { keep: true }).data?.today;
  const valid = /^\d{4}-\d{2}-\d{2}$/.test(value);
  return (
    <div className="due-field">
      <Field label="Due" type="date" mono value={value} onChange={onChange} error={error} className="grow" />
      {today ? STEPS.map((n) => <Button key={n} kind="quiet" onPress={() => { onChange(addDays(today, n)); }}>+{n}</Button>) : null}
      <span className="quiet due-words">{today && valid ? showDue(value, today) : 'no date'}</span>
    </div>
  );
}
