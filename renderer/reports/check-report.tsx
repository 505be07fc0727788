import { useRef, useState } from 'react';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { useChange } from '../queries.ts';
import { gatherFiles } from '../runs/incoming-file.ts';
import { useWindowDrop } from '../runs/use-window-drop.ts';
import { VerdictSheet } from './verdict-sheet.tsx';
import './reports.css';

/** Takes a PDF, from a drop anywhere on the window or from a choice, and says whether it is a report as it was issued. Keeps nothing. */
export function CheckReport({ zone }: { readonly zone: string }) {
  const picker = useRef<HTMLInputElement>(null);
  const check = useChange('reports.check');
  const [name, setName] = useState('');
  const [refused, setRefused] = useState('');
  const take = async (list: readonly File[]) => {
    const [first] = list;
    if (!first) return;
    check.reset();
    const { files, refused: why } = await gatherFiles([first]);
    const [file] = files;
    setRefused(list.length > 1 ? `One file at a time: “${first.name}” was checked.` : why[0] ?? '');
    if (!file) return;
    setName(file.name);
    check.mutate({ bytes: file.bytes });
  };
  const over = useWindowDrop((transfer) => { void take([...transfer.files]); });
  useKey('F', () => { picker.current?.click(); });
  return (
    <div className={`report-check ${over ? 'report-over' : ''}`}>
      <div className="report-drop">
        <p>{over ? 'Let go: it is looked at and not kept.' : check.data ? 'Drop another report anywhere on this page, or' : 'Drop the PDF of a report anywhere on this page, or'}</p>
        <Button keys="F" onPress={() => { picker.current?.click(); }}>Choose the file</Button>
        <input ref={picker} type="file" accept="application/pdf" className="hide" tabIndex={-1} aria-label="PDF of a report" onChange={(e) => { void take([...e.target.files ?? []]); e.target.value = ''; }} />
      </div>
      {refused ? <p className="warn">{refused}</p> : null}
      {check.isPending ? <Working what="Checking every byte" /> : null}
      {check.error ? <Trouble {...check.error.failure} /> : null}
      {check.data ? <VerdictSheet name={name} verdict={check.data} zone={zone} /> : (
        <p className="quiet report-what">A report carries its signature, its raw records and its data inside. This tells whether it is byte for byte as a laboratory issued it, and if not, what was altered. The file is looked at on this machine and is not kept.</p>
      )}
    </div>
  );
}
