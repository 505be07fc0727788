import { Dialog } from '../look/dialog.tsx';
import { useNotes } from '../look/notes.tsx';
import { SignInForm } from '../people/sign-in-form.tsx';
import { useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';
import { rolesText } from './roles-text.ts';
import './house.css';

/** Another person takes over at this window. */
export function WhoWorks({ onClose }: { readonly onClose: () => void }) {
  const { laboratory, status } = useHouse();
  return (
    <Dialog title="Who works at this window?" onClose={onClose} width={460}>
      {laboratory.isDemonstration ? <Invented onClose={onClose} /> : (
        <>
          <SignInForm people={status.people} showNames={laboratory.settings.showNames} start={null} onDone={onClose} />
          <p className="quiet">Everything done here is written under this name.</p>
        </>
      )}
    </Dialog>
  );
}

/** The demonstration's people are invented: a name is enough, and it says so. */
function Invented({ onClose }: { readonly onClose: () => void }) {
  const house = useHouse();
  const actAs = useChange('people.actAs');
  const notes = useNotes();
  const active = house.people.filter((p) => p.active);
  return (
    <>
      <ul className="people-choice">
        {active.map((p, i) => (
          <li key={p.id}>
            <button type="button" autoFocus={p.id === house.me?.id || (house.me === null && i === 0)} aria-current={p.id === house.me?.id} onClick={() => {
              actAs.mutate({ personId: p.id }, { onSuccess: onClose, onError: (e) => { notes.complain(e.failure); } });
            }}>
              <span>{p.name}</span><span className="quiet">{rolesText(p.roles)}</span>
            </button>
          </li>
        ))}
      </ul>
      <p className="quiet">These people are invented and need no password. In your own casebook everybody signs in with one.</p>
    </>
  );
}
