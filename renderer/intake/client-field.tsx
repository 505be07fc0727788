import { useRef, useState } from 'react';
import { ComboBox, Input, Label, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { Button } from '../look/button.tsx';
import { Field } from '../look/field.tsx';
import { useAsk } from '../queries.ts';
import { EMPTY_CLIENT, type ClientForm } from './intake-state.ts';
import type { FieldSentences } from './intake-to-input.ts';
import './intake.css';

/** A client found by typing, or a new one written down with what is needed to reach them. */
export function ClientField({ client, onChange, wrong, autoFocus = false }: {
  readonly client: ClientForm; readonly onChange: (client: ClientForm) => void; readonly wrong: FieldSentences; readonly autoFocus?: boolean;
}) {
  const [text, setText] = useState(client.name);
  const typed = useRef(client.name);
  const found = useAsk('clients.search', client.existing === null ? { text: text.trim() } : null, { keep: true });
  if (client.existing !== null) {
    return (
      <div className="client-chosen">
        <span className="label">Client</span>
        <p className="row gap8"><span className="two-lines grow" title={client.name}>{client.name}</span><Button kind="quiet" onPress={() => { setText(''); onChange(EMPTY_CLIENT); }}>Another</Button></p>
        <p className="quiet two-lines">{[client.address, client.email, client.phone].filter(Boolean).join(' · ')}</p>
      </div>
    );
  }
  const fresh = text.trim() !== '' && !found.data?.some((c) => c.name.toLowerCase() === text.trim().toLowerCase());
  return (
    <div className="stack gap8">
      <ComboBox className="field combo" inputValue={text} allowsCustomValue menuTrigger="input" isInvalid={wrong['client.name'] !== undefined} items={found.data ?? []}
        onInputChange={(value) => { setText(value); typed.current = value; onChange({ ...client, name: value }); }}
        onSelectionChange={(key) => {
          const chosen = found.data?.find((c) => c.id === key);
          if (chosen) onChange({ existing: chosen.id, name: chosen.name, address: chosen.address, email: chosen.email, phone: chosen.phone, note: chosen.note });
        }}>
        <Label className="label">Client</Label>
        <span className="field-box"><Input autoFocus={autoFocus} data-path="client.name" placeholder="Type a name: found in the list, or new" /></span>
        {wrong['client.name'] ? <span className="field-error">{wrong['client.name']}</span> : null}
        <Popover className="combo-list" placement="bottom start">
          <ListBox>
            {(c: NonNullable<typeof found.data>[number]) => (
              <ListBoxItem id={c.id} textValue={c.name} className="combo-item"><span className="one-line grow">{c.name}</span><span className="quiet one-line">{c.address}</span><span className="mono quiet">{c.cases}</span></ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </ComboBox>
      {fresh ? (
        <div className="stack gap8">
          <p className="quiet">A new client. How to reach them:</p>
          <Field label="Address" value={client.address} onChange={(address) => { onChange({ ...client, address }); }} error={wrong['client.address']} />
          <div className="intake-two">
            <Field label="E-mail" type="email" value={client.email} onChange={(email) => { onChange({ ...client, email }); }} error={wrong['client.email']} />
            <Field label="Telephone" type="tel" value={client.phone} onChange={(phone) => { onChange({ ...client, phone }); }} error={wrong['client.phone']} />
          </div>
        </div>
      ) : null}
    </div>
  );
}
