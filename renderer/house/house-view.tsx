import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { setTheme, useTheme } from '../look/theme.ts';
import { Segmented } from '../look/choice.tsx';
import { useChange } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { useHouse } from './house-context.tsx';
import { LaboratoryForm } from './laboratory-form.tsx';
import { LotsForm } from './lots-form.tsx';
import { ProtocolsForm } from './protocols-form.tsx';
import { KeysSection } from './keys-section.tsx';
import { KnownKeys } from './known-keys.tsx';
import { PeopleSection } from './people-section.tsx';
import { TextsForm } from './texts-form.tsx';
import { TemplatesSection } from './templates/templates-section.tsx';
import { AuthorisationsForm } from './authorisations-form.tsx';
import { rolesText } from './roles-text.ts';
import './house.css';

/** The laboratory, its people, the file, and the look. */
export default function HouseView() {
  const { laboratory, status, me } = useHouse();
  const backup = useChange('casebook.backup');
  const close = useChange('casebook.closeDemonstration');
  const notes = useNotes();
  const theme = useTheme();
  return (
    <View over={<span className="mono">{status.file}</span>} title="House" beside={laboratory.name} actions={(
      <>
        <Segmented label="Look" value={theme} onChange={setTheme} options={[{ value: 'light', label: 'light' }, { value: 'dark', label: 'dark' }]} />
        {laboratory.isDemonstration ? <Button onPress={() => { close.mutate({}, { onError: (e) => { notes.complain(e.failure); } }); }}>Leave the demonstration</Button> : null}
        <Button isPending={backup.isPending} onPress={() => { backup.mutate({}, { onSuccess: (b) => { notes.say(`Copied and checked: ${b.file}`); }, onError: (e) => { notes.complain(e.failure); } }); }}>Keep a copy now</Button>
      </>
    )}>
      <div className="page page-sheet house">
        {me !== null && !me.roles.includes('manager') ? <p className="second house-note">What stands here is changed by a manager; {me.name} works here as {rolesText(me.roles)} and may read it.</p> : null}
        <LaboratoryForm laboratory={laboratory} />
        <div className="house-beside">
          <PeopleSection />
          <KeysSection />
          <KnownKeys />
          <ProtocolsForm laboratory={laboratory} />
          <TextsForm />
          <TemplatesSection />
          <AuthorisationsForm />
          <LotsForm laboratory={laboratory} />
        </div>
      </div>
    </View>
  );
}
