import { useRef, useState } from 'react';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { useChange } from '../queries.ts';
import { gatherFiles, type IncomingFile } from '../runs/incoming-file.ts';
import { useWindowDrop } from '../runs/use-window-drop.ts';
import { BundleSheet } from './bundle-sheet.tsx';
import { canBeTaken, TakeInBundle } from './take-in-bundle.tsx';
import { VerdictSheet } from './verdict-sheet.tsx';
import './reports.css';

/** How every zip begins (PKWARE APPNOTE 4.3.7). */
const ZIP = [0x50, 0x4b, 0x03, 0x04];

/** Whether a file is meant to be a bundle and not a report: by its name, or by its first bytes. */
const isZip = ({ name, bytes }: IncomingFile): boolean => /\.zip$/i.test(name) || ZIP.every((byte, i) => bytes[i] === byte);

/** Takes a PDF or a zip, from a drop anywhere on the window or from a choice, and says whether it is a report or a bundle as it was written. Keeps nothing. */
export function CheckReport({ zone, mayTakeIn = false }: { readonly zone: string; readonly mayTakeIn?: boolean }) {
  const picker = useRef<HTMLInputElement>(null);
  const report = useChange('reports.check');
  const bundle = useChange('bundles.check');
  const [name, setName] = useState('');
  const [brought, setBrought] = useState<IncomingFile | null>(null);
  const [refused, setRefused] = useState('');
  const take = async (list: readonly File[]) => {
    const [first] = list;
    if (!first) return;
    report.reset();
    bundle.reset();
    const { files, refused: why } = await gatherFiles([first]);
    const [file] = files;
    const large = !file && /\.zip$/i.test(first.name) ? ' The command line checks bundles of any size: culet verify FILE.' : '';
    setRefused(list.length > 1 ? `One file at a time: “${first.name}” was checked.` : why[0] === undefined ? '' : why[0] + large);
    if (!file) return;
    setName(file.name);
    setBrought(file);
    (isZip(file) ? bundle : report).mutate({ bytes: file.bytes });
  };
  const over = useWindowDrop((transfer) => { void take([...transfer.files]); });
  useKey('F', () => { picker.current?.click(); });
  const failure = report.error?.failure ?? bundle.error?.failure;
  const answered = report.data !== undefined || bundle.data !== undefined;
  return (
    <div className={`report-check ${over ? 'report-over' : ''}`}>
      <div className="report-drop">
        <p>{over ? 'Let go: it is looked at and not kept.' : answered ? 'Drop another report or bundle anywhere on this page, or' : 'Drop the PDF of a report or the zip of a bundle anywhere on this page, or'}</p>
        <Button keys="F" onPress={() => { picker.current?.click(); }}>Choose the file</Button>
        <input ref={picker} type="file" accept="application/pdf,.zip" className="hide" tabIndex={-1} aria-label="PDF of a report or zip of a bundle" onChange={(e) => { void take([...e.target.files ?? []]); e.target.value = ''; }} />
      </div>
      {refused ? <p className="warn">{refused}</p> : null}
      {report.isPending || bundle.isPending ? <Working what="Checking every byte" /> : null}
      {failure ? <Trouble {...failure} /> : null}
      {report.data ? <VerdictSheet name={name} verdict={report.data} zone={zone} /> : null}
      {bundle.data ? <BundleSheet name={name} verdict={bundle.data} zone={zone} /> : null}
      {bundle.data && brought && mayTakeIn && canBeTaken(bundle.data) ? <TakeInBundle key={brought.key} file={brought} verdict={bundle.data} /> : null}
      {answered ? null : (
        <p className="quiet report-what">A report carries its signature, its raw records and its data inside; a bundle holds whole cases with both ledgers. This tells whether it is byte for byte as a laboratory wrote it, and if not, what was altered. The file is looked at on this machine and is not kept.</p>
      )}
    </div>
  );
}
