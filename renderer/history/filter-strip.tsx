import { COLOUR_CLASSES, COLOUR_CLASS_WORDS } from '../../app/domain/colour-class.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { METHOD_IDS, METHODS } from '../../app/domain/method.ts';
import type { HistoryFilter } from '../../app/contract/history.ts';
import type { Output } from '../../app/contract/index.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { STAGE_WORDS } from '../stones/stage-words.ts';
import { isUnfiltered, NO_FILTER } from './history-filter.ts';

const ANY = 'any';
type Of<K extends keyof HistoryFilter> = NonNullable<HistoryFilter[K]> & string;

const YES_NO = [{ value: 'yes', label: 'yes' }, { value: 'no', label: 'no' }] as const;
const yesNo = (value: boolean | null): string => (value === null ? ANY : value ? 'yes' : 'no');
const fromYesNo = (value: string): boolean | null => (value === ANY ? null : value === 'yes');

/** Everything by which the history can be narrowed, in two lines above the list. */
export function FilterStrip({ filter, change, choices }: {
  readonly filter: HistoryFilter; readonly change: (part: Partial<HistoryFilter>) => void; readonly choices: Output<'history.choices'> | undefined;
}) {
  const any = { value: ANY, label: 'any' };
  const named = (list: readonly { id: string; name: string }[] | undefined) => [any, ...(list ?? []).map(({ id, name }) => ({ value: id, label: name }))];
  const pick = <K extends 'clientId' | 'state' | 'stage' | 'conclusion' | 'personId' | 'instrumentId' | 'method' | 'colourClass' | 'setting'>(key: K, label: string, options: readonly { value: string; label: string }[]) => (
    <Choice label={label} value={filter[key] ?? ANY} options={options} onChange={(value) => { change({ [key]: value === ANY ? null : (value as Of<K>) } as Partial<HistoryFilter>); }} />
  );
  return (
    <div className="history-filter" role="group" aria-label="Narrow the history">
      <Field label="Received from" type="date" value={filter.from ?? ''} onChange={(value) => { change({ from: value === '' ? null : value }); }} />
      <Field label="to" type="date" value={filter.to ?? ''} onChange={(value) => { change({ to: value === '' ? null : value }); }} />
      {pick('clientId', 'Client', named(choices?.clients))}
      {pick('state', 'Case', [any, { value: 'open', label: 'open' }, { value: 'reported', label: 'reported' }, { value: 'returned', label: 'returned' }])}
      {pick('stage', 'Stage', [any, ...Object.entries(STAGE_WORDS).map(([value, label]) => ({ value, label }))])}
      {pick('conclusion', 'Conclusion', [any, ...CONCLUSION_IDS.map((value) => ({ value, label: CONCLUSION_WORDS[value] }))])}
      {pick('personId', 'Person', named(choices?.people))}
      {pick('instrumentId', 'Instrument', named(choices?.instruments))}
      {pick('method', 'Test', [any, ...METHOD_IDS.map((value) => ({ value, label: METHODS[value].name }))])}
      {pick('colourClass', 'Colour class', [any, ...COLOUR_CLASSES.map((value) => ({ value, label: COLOUR_CLASS_WORDS[value] }))])}
      {pick('setting', 'Setting', [any, { value: 'loose', label: 'loose' }, { value: 'mounted', label: 'mounted' }])}
      <Choice label="Sent further" value={yesNo(filter.sentFurther)} options={[any, ...YES_NO]} onChange={(value) => { change({ sentFurther: fromYesNo(value) }); }} />
      <Choice label="Disagreement" value={yesNo(filter.disagreement)} options={[any, ...YES_NO]} onChange={(value) => { change({ disagreement: fromYesNo(value) }); }} />
      <Button kind="quiet" isDisabled={isUnfiltered(filter)} onPress={() => { change(NO_FILTER); }}>Show all</Button>
    </div>
  );
}
