import type { ObservedMethod } from '../../app/domain/observation.ts';
import { Field } from '../look/field.tsx';
import { BigChoice } from './big-choice.tsx';
import { chooseIn, toggleIn, type ObservationDraft } from './observation-draft.ts';
import { OBSERVATION_FIELDS } from './observation-fields.ts';

/** What was seen, asked in the order in which it is seen. */
export function ObservationForm({ method, draft, onDraft, faults }: {
  readonly method: ObservedMethod; readonly draft: ObservationDraft; readonly onDraft: (draft: ObservationDraft) => void; readonly faults: Readonly<Record<string, string>>;
}) {
  const fields = OBSERVATION_FIELDS[method];
  const numbers = fields.filter((field) => field.kind === 'number');
  return (
    <div className="observation" key={method}>
      {fields.map((field, i) => {
        if (field.kind === 'number') return null;
        const many = field.kind === 'many';
        const chosen = many ? draft.many[field.key] ?? [] : [draft.choices[field.key] ?? ''];
        return (
          <BigChoice key={field.key} label={field.label} options={field.options} many={many} chosen={chosen} error={faults[field.key]} autoFocus={i === 0}
            onChoose={(value) => { onDraft(many ? toggleIn(draft, field.key, value) : chooseIn(draft, field.key, value)); }} />
        );
      })}
      {numbers.length > 0 ? (
        <div className="observation-numbers">
          {numbers.map((field, i) => (
            <Field key={field.key} label={field.missing === null ? `${field.label} (if counted)` : field.label} mono suffix={field.suffix || undefined} value={draft.numbers[field.key] ?? ''} error={faults[field.key]}
              autoFocus={i === 0 && fields[0]?.kind === 'number'} onChange={(text) => { onDraft({ ...draft, numbers: { ...draft.numbers, [field.key]: text } }); }} />
          ))}
        </div>
      ) : null}
    </div>
  );
}
