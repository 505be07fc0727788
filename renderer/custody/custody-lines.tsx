import { useHouse } from '../house/house-context.tsx';
import { Check } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { LINE_NAMES, type CustodyAction, type Line } from './custody-actions.ts';
import type { CustodyDraft } from './custody-draft.ts';
import './custody.css';

const PLACES = 'custody-places';
const PLACEHOLDERS: Readonly<Partial<Record<Line, string>>> = { purpose: 'infrared at another laboratory, setting, photograph …', place: 'safe, tray 2' };

function shows(line: Line, action: CustodyAction, outside: boolean): boolean {
  if (action.event !== 'handed-over') return true;
  if (line === 'dueBack') return outside;
  return line !== 'place' || !outside;
}

/** The lines that one kind of entry asks for. */
export function CustodyLines({ action, draft, wrong, weightUnit, onDraft }: {
  readonly action: CustodyAction; readonly draft: CustodyDraft; readonly wrong: Readonly<Record<string, string>>; readonly weightUnit: 'ct' | 'g' | null; readonly onDraft: (draft: CustodyDraft) => void;
}) {
  const { laboratory } = useHouse();
  const shown = action.asks.filter((line) => shows(line, action, draft.outside));
  return (
    <>
      {action.event === 'handed-over' ? <Check label="It leaves the house and is expected back" checked={draft.outside} onChange={(outside) => { onDraft({ ...draft, outside }); }} /> : null}
      {shown.map((line, i) => (
        <Field key={line} label={line === 'place' && action.event === 'seen' ? 'Where' : LINE_NAMES[line]} value={draft.lines[line] ?? ''} autoFocus={i === 0} mono={line === 'weight' || line === 'seal' || line === 'dueBack'}
          type={line === 'dueBack' ? 'date' : 'text'} list={line === 'place' ? PLACES : undefined} suffix={line === 'weight' ? weightUnit : undefined} placeholder={PLACEHOLDERS[line]}
          lines={line === 'note' ? 2 : undefined} error={wrong[line]} onChange={(value) => { onDraft({ ...draft, lines: { ...draft.lines, [line]: value } }); }} />
      ))}
      <datalist id={PLACES}>{laboratory.settings.places.map((place) => <option key={place} value={place} />)}</datalist>
    </>
  );
}
