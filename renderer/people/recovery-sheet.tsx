import { useSyncExternalStore } from 'react';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { saveFile } from '../look/save-file.ts';
import { useHouse } from '../house/house-context.tsx';
import './people.css';

let shown: string | null = null;
const listeners = new Set<() => void>();

/** Shows the sheet as soon as a casebook is open: it is told once. */
export function showRecoverySheet(recovery: string | null): void {
  shown = recovery;
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => { listeners.delete(listener); };
};

const HOW = [
  'With this code a manager who lost the password, and has no other manager to ask, chooses a new one:',
  'on the sign-in page, “Lost password”. It opens the laboratory’s key too where no password does, as on another computer:',
  'House, The laboratory’s key, “Open with the recovery sheet”. It is good once; a new sheet is given then.',
] as const;

const sheetText = (laboratory: string, file: string, recovery: string) => [
  'Recovery sheet', '', `Laboratory: ${laboratory}`, `Casebook: ${file}`, `Code: ${recovery}`, '', ...HOW,
  'Print it, lay it where you keep what must not be lost, and delete this file.', '',
].join('\r\n');

/** The sheet alone on paper, with what only paper needs: whose it is and how it is used. Nothing of it is left on the disk. */
function printSheet(): void {
  document.body.classList.add('prints-sheet');
  window.addEventListener('afterprint', () => { document.body.classList.remove('prints-sheet'); }, { once: true });
  window.print();
}

/** The laboratory's way back in, to be printed and put away. */
export function RecoverySheet() {
  const recovery = useSyncExternalStore(subscribe, () => shown);
  const { laboratory, status } = useHouse();
  if (recovery === null) return null;
  return (
    <Dialog title="The recovery sheet" width={520} onClose={() => { showRecoverySheet(null); }} footer={(
      <>
        <Button onPress={printSheet}>Print the sheet</Button>
        <Button onPress={() => { saveFile('recovery-sheet.txt', 'text/plain', sheetText(laboratory.name, status.file, recovery)); }}>Save the sheet</Button>
        <Button kind="main" onPress={() => { showRecoverySheet(null); }}>It is put away</Button>
      </>
    )}>
      <p className="screen-only">If the only manager loses the password, this code is the way back in. It also opens the laboratory’s key on another computer. It is shown once; a manager can make a new one under House.</p>
      <div className="paper-only"><p>Laboratory: {laboratory.name}</p><p>Casebook: {status.file}</p></div>
      <p className="mono recovery-code">{recovery}</p>
      <p className="paper-only">{HOW.join(' ')}</p>
      <p className="second screen-only">Print the sheet or write the code down, and keep it apart from this machine. Without it and without a second manager nobody can give a new password, and reports can no longer be signed with the laboratory’s key.</p>
    </Dialog>
  );
}
