import { useMemo, useRef, useState } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import { LOT_OUTCOMES, OUTCOME_SHORT, type LotOutcome } from '../../app/lots/lot-outcome.ts';
import { entriesToAdd, guessMapping, readResults, readTable, SEPARATORS, type ResultMapping, type ResultTable, type Separator } from '../../app/lots/read-results.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

const SEPARATOR_WORDS: Readonly<Record<Separator, string>> = { '\t': 'tab', ';': 'semicolon', ',': 'comma', '|': 'upright stroke' };
const SHOWN_ROWS = 6;
const LEAVE_OUT = 'leave-out';

type Read = { readonly name: string; readonly bytes: Uint8Array; readonly table: ResultTable; readonly mapping: ResultMapping };
type Props = { readonly lot: LotView; readonly count: number; readonly standing: ReadonlyMap<number, LotOutcome>; readonly onClose: () => void };

/** A list of results from a file: how it is read, what it would enter, what it would not, before anything is kept. */
export function ImportSheet({ lot, count, standing, onClose }: Props) {
  const [read, setRead] = useState<Read | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [replace, setReplace] = useState(false);
  const picker = useRef<HTMLInputElement>(null);
  const keep = useChange('lots.import');
  const notes = useNotes();

  const open = (name: string, bytes: Uint8Array, separator?: Separator) => {
    const table = readTable(bytes, separator);
    setFault(table.ok ? null : table.error.message);
    setRead(table.ok ? { name, bytes, table: table.value, mapping: guessMapping(table.value) } : null);
  };
  const choose = async (file: File | undefined) => { if (file) open(file.name, new Uint8Array(await file.arrayBuffer())); };
  const outcome = useMemo(() => {
    if (read === null) return null;
    const results = readResults(read.table, read.mapping, count);
    return { results, add: entriesToAdd(results, standing, replace) };
  }, [read, count, standing, replace]);
  const ready = outcome !== null && outcome.results.unknownWords.length === 0 && outcome.add.entries.length > 0;
  const map = (change: Partial<ResultMapping>) => { if (read) setRead({ ...read, mapping: { ...read.mapping, ...change } }); };
  const mean = (word: string, as: string) => { if (read) map({ words: { ...read.mapping.words, [word]: as === LEAVE_OUT ? null : as as LotOutcome } }); };
  const submit = () => {
    if (!read || !ready) return;
    keep.mutate({ itemId: lot.itemId, name: read.name, bytes: read.bytes, mapping: { ...read.mapping, words: { ...read.mapping.words } }, replace, note: '' }, {
      onSuccess: (kept) => { notes.say(`${kept.entered} results entered from ${read.name}; the file is kept with the case.`); onClose(); },
    });
  };
  useKey('Mod+Enter', submit);
  const width = read ? Math.max(...read.table.rows.map((row) => row.length)) : 0;
  const columns = Array.from({ length: width }, (_, c) => ({ value: String(c), label: read?.mapping.headings && read.table.rows[0]?.[c] ? `${c + 1} · ${read.table.rows[0][c]}` : `column ${c + 1}` }));
  return (
    <Dialog asks title={`Results of lot ${lot.label} from a list`} onClose={onClose} width={680} footer={read ? <Button kind="main" keys="Mod+Enter" isDisabled={!ready || keep.isPending} onPress={submit}>{outcome && outcome.add.entries.length > 0 ? `Enter ${outcome.add.entries.length} results` : 'Nothing to enter'}</Button> : undefined}>
      <input ref={picker} type="file" className="hide" tabIndex={-1} aria-label="List of results" accept=".csv,.txt,.tsv,text/*" onChange={(e) => { void choose(e.target.files?.[0]); e.target.value = ''; }} />
      {read === null ? <p className="second">A text with a line for each stone: its number and its outcome, in columns set apart by tab, semicolon or comma. Nothing is kept before you have seen what it says.</p> : null}
      {fault ? <p className="warn" role="alert">{fault}</p> : null}
      <div className="row gap12"><Button kind={read ? 'plain' : 'main'} autoFocus onPress={() => { picker.current?.click(); }}>{read ? 'Choose another file' : 'Choose the file'}</Button>{read ? <span className="mono one-line">{read.name}</span> : null}</div>
      {read && outcome ? (
        <>
          <div className="fields-four">
            <Choice label="Stone’s number" value={String(read.mapping.number)} onChange={(c) => { map({ number: Number(c) }); }} options={columns} />
            <Choice label="Outcome" value={String(read.mapping.outcome)} onChange={(c) => { map({ outcome: Number(c), words: {} }); }} options={columns} />
            <Choice<Separator> label="Set apart by" value={read.mapping.separator} onChange={(separator) => { open(read.name, read.bytes, separator); }} options={SEPARATORS.map((value) => ({ value, label: SEPARATOR_WORDS[value] }))} />
            <Check label="first line is headings" checked={read.mapping.headings} onChange={(headings) => { map({ headings }); }} />
          </div>
          <table className="lot-preview" aria-label="First lines of the list">
            <tbody>{read.table.rows.slice(0, SHOWN_ROWS).map((row, i) => <tr key={read.table.lines[i]} className={i === 0 && read.mapping.headings ? 'quiet' : ''}>{columns.map(({ value }) => <td key={value} className={Number(value) === read.mapping.number || Number(value) === read.mapping.outcome ? '' : 'quiet'}>{row[Number(value)] ?? ''}</td>)}</tr>)}</tbody>
          </table>
          {outcome.results.unknownWords.length > 0 ? <p className="second">What do these words mean?</p> : null}
          {[...outcome.results.unknownWords.map(({ word, count: n }) => ({ word, n })), ...Object.keys(read.mapping.words).map((word) => ({ word, n: null }))].map(({ word, n }) => {
            const said = Object.hasOwn(read.mapping.words, word) ? read.mapping.words[word] ?? LEAVE_OUT : '';
            return <Choice key={word} label={`“${word}”${n === null ? '' : `, ${n} row${n === 1 ? '' : 's'}`}`} value={said} placeholder="choose" onChange={(as) => { mean(word, as); }} options={[...LOT_OUTCOMES.map((value) => ({ value: value as string, label: OUTCOME_SHORT[value] })), { value: LEAVE_OUT, label: 'leave these rows out' }]} />;
          })}
          <div className="stack gap4" role="status">
            <p>{outcome.add.entries.length} of {read.table.rows.length - (read.mapping.headings ? 1 : 0)} rows give results that are not entered yet{outcome.add.same > 0 ? `; ${outcome.add.same} are entered already` : ''}.</p>
            {outcome.add.differing.length > 0 ? <p className="warn">{outcome.add.differing.length} {outcome.add.differing.length === 1 ? 'stone stands' : 'stones stand'} otherwise in the lot: {outcome.add.differing.slice(0, 8).join(', ')}{outcome.add.differing.length > 8 ? ' …' : ''}.</p> : null}
            {outcome.results.sentences.map((sentence) => <p key={sentence} className="warn">{sentence}</p>)}
          </div>
          {outcome.add.differing.length > 0 || replace ? <Check label="Correct those by the list; what stood before stays in the lot’s book" checked={replace} onChange={setReplace} /> : null}
          {keep.error ? <Trouble {...keep.error.failure} /> : null}
        </>
      ) : null}
    </Dialog>
  );
}
