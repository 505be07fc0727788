import { useState, type ReactNode } from 'react';
import { FieldError, Input, Label, Text, TextArea, TextField } from 'react-aria-components';
import './field.css';

type Common = {
  readonly label: string;
  readonly hint?: string;
  /** Sentence beside the field while it is wrong. */
  readonly error?: string | undefined;
  /** Sentence that came back for what was handed in: it goes as soon as something else is written, and returns with the next refusal. */
  readonly refusal?: string | undefined;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onBlur?: () => void;
  readonly placeholder?: string;
  readonly autoFocus?: boolean;
  readonly mono?: boolean;
  readonly suffix?: ReactNode;
  readonly list?: string;
  readonly type?: 'text' | 'date' | 'email' | 'tel' | 'password';
  readonly disabled?: boolean;
  readonly className?: string;
  readonly hideLabel?: boolean;
  readonly inputId?: string;
};

/** The refusal while it still speaks of what stands in the field. A form that is handed in again has none meanwhile, so that the same sentence counts anew. */
function useStanding(refusal: string | undefined, value: string): string | undefined {
  const [refused, setRefused] = useState({ refusal, value });
  if (refused.refusal !== refusal) setRefused({ refusal, value });
  return refused.refusal === refusal && refused.value !== value ? undefined : refusal;
}

/** A labelled line to write on, with its sentence when something is wrong. */
export function Field(p: Common & { readonly lines?: number }) {
  const refusal = useStanding(p.refusal, p.value);
  const error = p.error ?? refusal;
  return (
    <TextField
      className={`field ${p.mono ? 'field-mono' : ''} ${p.className ?? ''}`} value={p.value} onChange={p.onChange} onBlur={p.onBlur}
      isInvalid={error !== undefined} isDisabled={p.disabled ?? false} validationBehavior="aria" type={p.type ?? 'text'}
    >
      <Label className={p.hideLabel ? 'hide' : 'label'}>{p.label}</Label>
      <span className="field-box">
        {p.lines
          ? <TextArea rows={p.lines} placeholder={p.placeholder} autoFocus={p.autoFocus} />
          : <Input placeholder={p.placeholder} autoFocus={p.autoFocus} list={p.list} id={p.inputId} autoComplete="off" />}
        {p.suffix ? <span className="field-suffix">{p.suffix}</span> : null}
      </span>
      {p.hint && !error ? <Text slot="description" className="field-hint">{p.hint}</Text> : null}
      <FieldError className="field-error">{error}</FieldError>
    </TextField>
  );
}
