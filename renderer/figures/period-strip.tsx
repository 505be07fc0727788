import type { Failure } from '../../app/contract/failure.ts';
import type { Grain } from '../../app/history/steps.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { SPANS, type ShownPeriod } from './use-figures-period.ts';

const GRAIN_WORDS: readonly { readonly value: Grain; readonly label: string }[] = [
  { value: 'week', label: 'by week' }, { value: 'month', label: 'by month' }, { value: 'quarter', label: 'by quarter' }, { value: 'year', label: 'by year' },
];

/** Which days are looked at, and in what steps. */
export function PeriodStrip({ shown, change, today, first, failure, withSteps = true }: {
  readonly shown: ShownPeriod; readonly change: (part: Partial<ShownPeriod>) => void; readonly today: string; readonly first: string; readonly failure: Failure | null; readonly withSteps?: boolean;
}) {
  const wrong = failure?.fields ?? {};
  return (
    <div className="figures-period" role="group" aria-label="Period">
      <Field label="From" type="date" value={shown.from} onChange={(from) => { if (from !== '') change({ from }); }} error={wrong['from']} />
      <Field label="To" type="date" value={shown.to} onChange={(to) => { if (to !== '') change({ to }); }} error={wrong['to']} />
      {withSteps ? <Choice label="Steps" value={shown.grain} options={GRAIN_WORDS} onChange={(grain) => { change({ grain }); }} error={wrong['grain']} /> : null}
      <div className="figures-spans">{SPANS.map(({ name, of }) => <Button key={name} kind="quiet" onPress={() => { change(of(today, first)); }}>{name}</Button>)}</div>
    </div>
  );
}
