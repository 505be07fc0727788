import { useState } from 'react';
import type { PersonView } from '../../app/contract/casebook.ts';
import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { setTheme, useTheme } from '../look/theme.ts';
import { Segmented } from '../look/choice.tsx';
import { useChange } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { useHouse } from './house-context.tsx';
import { rolesText } from './roles-text.ts';
import { LaboratoryForm } from './laboratory-form.tsx';
import { LotsForm } from './lots-form.tsx';
import { ProtocolsForm } from './protocols-form.tsx';
import { PersonForm } from './person-form.tsx';
import './house.css';

/** The laboratory, its people, the file, and the look. */
export default function HouseView() {
  const { laboratory, people, status } = useHouse();
  const [person, setPerson] = useState<PersonView | 'new' | null>(null);
  const backup = useChange('casebook.backup');
  const close = useChange('casebook.closeDemonstration');
  const notes = useNotes();
  const theme = useTheme();
  return (
    <View over={<span className="mono">{status.file}</span>} title="House" beside={laboratory.name} actions={(
      <>
        <Segmented label="Look" value={theme} onChange={setTheme} options={[{ value: 'light', label: 'light' }, { value: 'dark', label: 'dark' }]} />
        {laboratory.isDemonstration ? <Button onPress={() => { close.mutate({}, { onError: (e) => { notes.complain(e.failure); } }); }}>Leave the demonstration</Button> : null}
        <Button isDisabled={backup.isPending} onPress={() => { backup.mutate({}, { onSuccess: (b) => { notes.say(`Copied and checked: ${b.file}`); }, onError: (e) => { notes.complain(e.failure); } }); }}>Keep a copy now</Button>
      </>
    )}>
      <div className="page page-sheet house">
        <LaboratoryForm laboratory={laboratory} />
        <div className="house-beside">
          <section className="section house-people">
            <div className="row gap16"><h2 className="grow">People</h2><Button onPress={() => { setPerson('new'); }}>Add a person</Button></div>
            <ul className="rows">
              {people.map((p) => (
                <li key={p.id} className={`row gap12 ${p.active ? '' : 'quiet'}`}>
                  <div className="grow"><p>{p.name} <span className="quiet mono">{p.initials}</span></p><p className="quiet">{rolesText(p.roles)}{p.active ? '' : ' · no longer here'}</p></div>
                  <Button kind="quiet" onPress={() => { setPerson(p); }}>Edit</Button>
                </li>
              ))}
            </ul>
            <p className="quiet">A conclusion is confirmed by a second person, never by the one who concluded. People are not removed: what they did stays under their name.</p>
            {status.guardsRestored.length > 0 ? <p className="warn">When this file was opened, protections of its evidence were missing and were put back ({status.guardsRestored.join(', ')}). Somebody may have opened it with another program: verify the ledgers.</p> : null}
          </section>
          <ProtocolsForm laboratory={laboratory} />
          <LotsForm laboratory={laboratory} />
        </div>
      </div>
      {person ? <PersonForm person={person === 'new' ? null : person} onClose={() => { setPerson(null); }} /> : null}
    </View>
  );
}
