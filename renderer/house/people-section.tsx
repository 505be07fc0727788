import { useState } from 'react';
import type { PersonView } from '../../app/contract/casebook.ts';
import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { ChangePassword } from './change-password.tsx';
import { showRecoverySheet } from '../people/recovery-sheet.tsx';
import { useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';
import { GiveCode, OneTimeCode } from './one-time-code.tsx';
import { PersonForm } from './person-form.tsx';
import { rolesText } from './roles-text.ts';

/** Everybody who works or worked here, and the ways in. */
export function PeopleSection() {
  const { laboratory, people, me, status } = useHouse();
  const [person, setPerson] = useState<PersonView | 'new' | null>(null);
  const [lost, setLost] = useState<PersonView | null>(null);
  const [changing, setChanging] = useState(false);
  const [given, setGiven] = useState<{ readonly name: string; readonly code: string } | null>(null);
  const sheet = useChange('people.newRecovery');
  const notes = useNotes();
  const own = !laboratory.isDemonstration;
  const onCode = (name: string, code: string) => { setGiven({ name, code }); };
  return (
    <section className="section house-people">
      <div className="row gap16"><h2 className="grow">People</h2><Button onPress={() => { setPerson('new'); }}>Add a person</Button></div>
      <ul className="rows">
        {people.map((p) => (
          <li key={p.id} className={`row gap12 ${p.active ? '' : 'quiet'}`}>
            <div className="grow"><p>{p.name} <span className="quiet mono">{p.initials}</span></p><p className="quiet">{rolesText(p.roles)}{p.active ? '' : ' · no longer here'}</p></div>
            {own && p.active && p.id !== me?.id ? <Button kind="quiet" aria-label={`New code for ${p.name}`} onPress={() => { setLost(p); }}>New code</Button> : null}
            <Button kind="quiet" onPress={() => { setPerson(p); }}>Edit</Button>
          </li>
        ))}
      </ul>
      {own ? (
        <div className="row gap8">
          <Button onPress={() => { setChanging(true); }}>Change my password</Button>
          <Button isPending={sheet.isPending} onPress={() => { sheet.mutate({}, { onSuccess: ({ recovery }) => { showRecoverySheet(recovery); }, onError: (e) => { notes.complain(e.failure); } }); }}>New recovery sheet</Button>
        </div>
      ) : null}
      <p className="quiet">A conclusion is confirmed by a second person, never by the one who concluded. People are not removed: what they did stays under their name.</p>
      {status.guardsRestored.length > 0 ? <p className="warn">When this file was opened, the protections of its evidence were not as Culet had left them, and were put right ({status.guardsRestored.join(', ')}). Somebody may have opened it with another program: verify the ledgers.</p> : null}
      {person ? <PersonForm person={person === 'new' ? null : person} onClose={() => { setPerson(null); }} onCode={onCode} /> : null}
      {lost ? <GiveCode person={lost} onClose={() => { setLost(null); }} onCode={onCode} /> : null}
      {given ? <OneTimeCode {...given} onClose={() => { setGiven(null); }} /> : null}
      {changing ? <ChangePassword onClose={() => { setChanging(false); }} /> : null}
    </section>
  );
}
