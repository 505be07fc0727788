import { Dialog } from '../look/dialog.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';
import { rolesText } from './roles-text.ts';
import './house.css';

/** Chooses the person at this window. It is a statement, not a proof: there are no passwords yet, and it says so. */
export function WhoWorks({ onClose }: { readonly onClose: () => void }) {
  const house = useHouse();
  const actAs = useChange('people.actAs');
  const notes = useNotes();
  const active = house.people.filter((p) => p.active);
  return (
    <Dialog title="Who works at this window?" onClose={onClose} width={460}>
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
      <p className="quiet">Everything done here is written under this name. There is no password: whoever sits at this machine can choose any name, so keep the machine itself locked.</p>
    </Dialog>
  );
}
