import { useState } from 'react';
import type { LaboratoryView } from '../../app/contract/casebook.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { DEFAULT_PROTOCOLS } from '../../app/protocol/default-protocols.ts';
import { protocol as protocolSchema, PROTOCOL_PURPOSES, PURPOSE_WORDS, type Protocol, type ProtocolPurpose } from '../../app/protocol/protocol.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice, Segmented } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { moveStep, withStep } from './protocol-draft.ts';

/** Which tests a purpose asks for, in which order, and what may be skipped. */
export function ProtocolsForm({ laboratory }: { readonly laboratory: LaboratoryView }) {
  const { name, address, zone, logo, settings } = laboratory;
  const [purpose, setPurpose] = useState<ProtocolPurpose>('loose');
  const [drafts, setDrafts] = useState<readonly Protocol[]>(settings.protocols);
  const [fault, setFault] = useState<string | null>(null);
  const save = useChange('laboratory.save');
  const notes = useNotes();
  const one = drafts.find((entry) => entry.purpose === purpose)!;
  const change = (next: Protocol) => { setFault(null); setDrafts(drafts.map((entry) => (entry.purpose === purpose ? next : entry))); };
  const left = METHOD_IDS.filter((method) => !one.steps.some((step) => step.method === method));
  const submit = () => {
    const wrong = drafts.map((entry) => ({ entry, parsed: protocolSchema.safeParse(entry) })).find(({ parsed }) => !parsed.success);
    if (wrong !== undefined && !wrong.parsed.success) {
      setPurpose(wrong.entry.purpose);
      setFault(wrong.parsed.error.issues[0]?.message ?? 'This protocol is not complete.');
      return;
    }
    save.mutate({ name, address, zone, logo: logo as { mediaType: 'image/png' | 'image/jpeg'; bytes: Uint8Array } | null, settings: { ...settings, protocols: [...drafts] } }, { onSuccess: () => { notes.say('Protocols kept.'); } });
  };
  return (
    <section className="section protocols" aria-label="Protocols">
      <h2>Protocols</h2>
      <Segmented label="Purpose" value={purpose} onChange={(next) => { setPurpose(next); setFault(null); }} options={PROTOCOL_PURPOSES.map((value) => ({ value, label: PURPOSE_WORDS[value] }))} />
      <Field label="Name" value={one.name} onChange={(next) => { change({ ...one, name: next }); }} />
      <ol className="protocol-steps">
        {one.steps.map((step, i) => (
          <li key={step.method} className="row gap8">
            <span className="mono quiet">{i + 1}</span><span className="grow">{METHODS[step.method].name}</span>
            <Check label="may be skipped" checked={step.maySkip} onChange={(maySkip) => { change(withStep(one, i, { ...step, maySkip })); }} />
            <Button kind="quiet" aria-label={`${METHODS[step.method].name} earlier`} isDisabled={i === 0} onPress={() => { change(moveStep(one, i, -1)); }}>earlier</Button>
            <Button kind="quiet" aria-label={`${METHODS[step.method].name} later`} isDisabled={i === one.steps.length - 1} onPress={() => { change(moveStep(one, i, 1)); }}>later</Button>
            <Button kind="quiet" aria-label={`Leave ${METHODS[step.method].name} out`} onPress={() => { change(withStep(one, i, null)); }}>leave out</Button>
          </li>
        ))}
      </ol>
      {left.length > 0 ? <Choice<MethodId> label="Ask for another test" value="" placeholder="Choose a test" onChange={(method) => { change({ ...one, steps: [...one.steps, { method, maySkip: false }] }); }} options={left.map((method) => ({ value: method, label: METHODS[method].name }))} /> : null}
      {fault === null ? null : <p className="warn" role="alert">{fault}</p>}
      {save.error ? <Trouble {...save.error.failure} /> : null}
      <div className="row gap8">
        <Button kind="main" isPending={save.isPending} onPress={submit}>Keep the protocols</Button>
        <Button kind="quiet" onPress={() => { change({ ...DEFAULT_PROTOCOLS.find((entry) => entry.purpose === purpose)! }); }}>Back to the default</Button>
      </div>
      <p className="quiet">What a protocol asks for and was not done stands in the proposal and in the report. What may be skipped is offered and not missed. The order is common practice, no source; long-wave light belongs before short-wave.</p>
    </section>
  );
}
