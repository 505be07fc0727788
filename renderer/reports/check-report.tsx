import { useRef, useState } from 'react';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { useWindowDrop } from '../runs/use-window-drop.ts';
import { BundleSheet } from './bundle-sheet.tsx';
import { FileProgress, UploadProgress } from './file-progress.tsx';
import { canBeTaken, TakeInBundle } from './take-in-bundle.tsx';
import { useBroughtFile } from './use-brought-file.ts';
import { VerdictSheet } from './verdict-sheet.tsx';
import './reports.css';

/** Takes a PDF or a zip, from a drop anywhere on the window or from a choice, and says whether it is a report or a bundle as it was written. Keeps nothing unless it is taken in. */
export function CheckReport({ zone, mayTakeIn = false }: { readonly zone: string; readonly mayTakeIn?: boolean }) {
  const picker = useRef<HTMLInputElement>(null);
  const { brought, take, stop } = useBroughtFile();
  /** Name of the file that was taken where several came at once. */
  const [several, setSeveral] = useState('');
  const takeFirst = (list: readonly File[]) => {
    const [first] = list;
    if (!first) return;
    setSeveral(list.length > 1 ? first.name : '');
    take(first);
  };
  const over = useWindowDrop((transfer) => { takeFirst([...transfer.files]); });
  const choose = () => { picker.current?.click(); };
  useKey('F', choose);
  const answered = brought.state === 'report' || brought.state === 'bundle';
  return (
    <div className={`report-check ${over ? 'report-over' : ''}`}>
      <div className="report-drop">
        <p>{over ? 'Let go: it is looked at and not kept.' : answered ? 'Drop another report or bundle anywhere on this page, or' : 'Drop the PDF of a report or the zip of a bundle anywhere on this page, or'}</p>
        <Button keys="F" onPress={choose}>Choose the file</Button>
        <input ref={picker} type="file" accept="application/pdf,.zip" className="hide" tabIndex={-1} aria-label="PDF of a report or zip of a bundle" onChange={(e) => { takeFirst([...e.target.files ?? []]); e.target.value = ''; }} />
      </div>
      {several ? <p className="warn">One file at a time: “{several}” {answered ? 'was checked' : 'is looked at'}.</p> : null}
      {brought.state === 'sending' ? <FileProgress what={`Reading ${brought.name}`} done={brought.sent} total={brought.size} onStop={stop} /> : null}
      {brought.state === 'checking' ? <UploadProgress what={`Checking every byte of ${brought.name}`} upload={brought.upload} onStop={stop} /> : null}
      {brought.state === 'failed' ? <Trouble {...brought.failure} /> : null}
      {brought.state === 'report' ? <VerdictSheet name={brought.name} verdict={brought.verdict} zone={zone} /> : null}
      {brought.state === 'bundle' ? <BundleSheet name={brought.name} verdict={brought.verdict} zone={zone} /> : null}
      {brought.state === 'bundle' && mayTakeIn && canBeTaken(brought.verdict) ? <TakeInBundle key={brought.upload} upload={brought.upload} verdict={brought.verdict} onStop={stop} /> : null}
      {answered ? null : (
        <p className="quiet report-what">A report carries its signature, its raw records and its data inside; a bundle holds whole cases with both ledgers. This tells whether it is byte for byte as a laboratory wrote it, and if not, what was altered. The file is looked at on this machine and is not kept.</p>
      )}
    </div>
  );
}
