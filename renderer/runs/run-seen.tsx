import type { RunView } from '../../app/contract/work.ts';
import { METHODS } from '../../app/domain/method.ts';
import { OBSERVATION_FIELDS } from './observation-fields.ts';

function facts(run: RunView): { readonly label: string; readonly value: string }[] {
  const seen = run.observation;
  if (!seen) return [];
  const values = seen as Readonly<Record<string, unknown>>;
  return OBSERVATION_FIELDS[seen.method].flatMap((field) => {
    const value = values[field.key];
    if (value === undefined) return [];
    if (field.kind === 'number') return [{ label: field.label, value: `${String(value)}${field.suffix ? ` ${field.suffix}` : ''}` }];
    const list = Array.isArray(value) ? value as readonly string[] : [String(value)];
    return [{ label: field.label.replace(' (any number)', ''), value: list.map((one) => field.options.find((o) => o.value === one)?.label ?? one).join(', ') }];
  });
}

/** A run without a curve: what a person saw, or why nothing could be read. */
export function RunSeen({ run }: { readonly run: RunView }) {
  const list = facts(run);
  return (
    <section className="run-seen">
      <h2>{METHODS[run.method].name}</h2>
      <p className={`run-reads ${run.observation ? '' : 'warn'}`}>{run.reads}</p>
      {list.length > 0 ? <dl>{list.map((fact) => <div key={fact.label}><dt className="label">{fact.label}</dt><dd>{fact.value}</dd></div>)}</dl> : null}
      {run.observation?.note ? <p className="second">{run.observation.note}</p> : null}
      {!run.observation && run.spectra.length === 0 ? <p className="second">No curve of this run could be read; the reason stands beside each file below. The files are kept as they came. Save the measurement again from the instrument as JCAMP-DX or as columns of text, and add it as a new run.</p> : null}
    </section>
  );
}
