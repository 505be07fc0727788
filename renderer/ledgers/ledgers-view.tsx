import { useState } from 'react';
import type { AuditView } from '../../app/contract/cases.ts';
import type { CustodyView } from '../../app/contract/custody.ts';
import type { Verification } from '../../app/contract/casebook.ts';
import { door } from '../door.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { DataTable, type Column } from '../look/data-table.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { shortDigest, showMoment } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { go } from '../router.ts';
import { useKey } from '../keys/keymap.ts';
import { View } from '../shell/view.tsx';
import { custodyWords } from '../../app/report/custody-words.ts';
import { PeriodBundle } from './period-bundle.tsx';
import { VerificationSheet } from './verification-sheet.tsx';
import { Verifying } from './verifying.tsx';

type Book = 'custody' | 'audit';
const SHOWN = 1000;

/** Both ledgers, newest first, and the check that recomputes them. */
export default function LedgersView() {
  const { laboratory, me } = useHouse();
  const [book, setBook] = useState<Book>('custody');
  const [result, setResult] = useState<Verification | null>(null);
  const custody = useAsk('custody.list', book === 'custody' ? { caseId: null, itemId: null, limit: SHOWN } : null);
  const audit = useAsk('audit.list', book === 'audit' ? { caseId: null, limit: SHOWN } : null);
  const verify = useChange('ledgers.verify');
  const sign = useChange('checkpoints.make');
  const notes = useNotes();
  const [task] = useState(() => `verify ${Math.random().toString(36).slice(2)}`);
  const run = () => { if (!verify.isPending) verify.mutate({ task }, { onSuccess: setResult, onError: (e) => { if (e.failure.code !== 'cancelled') notes.complain(e.failure); else notes.say('Stopped. Nothing was found or ruled out.'); } }); };
  const stop = () => { void door.call('work.cancel', { task }); };
  useKey('V', run);
  const isManager = me?.roles.includes('manager') ?? false;
  const [bundling, setBundling] = useState(false);
  useKey('B', () => { if (isManager) setBundling(true); });

  const when = (at: string) => showMoment(at, laboratory.zone);
  const custodyColumns: readonly Column<CustodyView>[] = [
    { key: 'seq', head: 'No.', width: '56px', align: 'right', mono: true, cell: (r) => r.seq, sort: (r) => r.seq },
    { key: 'at', head: 'When', width: '150px', mono: true, cell: (r) => when(r.at), sort: (r) => r.at },
    { key: 'item', head: 'Item', width: '130px', mono: true, cell: (r) => `${r.caseNumber} / ${r.itemLabel}`, sort: (r) => `${r.caseNumber}/${r.itemLabel}` },
    { key: 'what', head: 'What', width: 'minmax(220px, 2fr)', cell: (r) => <span className={r.content.differs ? 'warn' : ''} title={custodyWords(r.content)}>{custodyWords(r.content)}</span> },
    { key: 'person', head: 'Written by', width: 'minmax(120px, 1fr)', cell: (r) => r.person, sort: (r) => r.person },
    { key: 'hash', head: 'Hash', width: '100px', mono: true, cell: (r) => <span title={r.hash}>{shortDigest(r.hash)}</span> },
  ];
  const auditColumns: readonly Column<AuditView>[] = [
    { key: 'seq', head: 'No.', width: '56px', align: 'right', mono: true, cell: (r) => r.seq, sort: (r) => r.seq },
    { key: 'at', head: 'When', width: '150px', mono: true, cell: (r) => when(r.at), sort: (r) => r.at },
    { key: 'person', head: 'Who', width: 'minmax(120px, 1fr)', cell: (r) => r.person, sort: (r) => r.person },
    { key: 'operation', head: 'Did', width: '170px', mono: true, cell: (r) => r.operation, sort: (r) => r.operation },
    { key: 'case', head: 'Case', width: '112px', mono: true, cell: (r) => r.caseNumber ?? '–', sort: (r) => r.caseNumber ?? '' },
    { key: 'content', head: 'What changed', width: 'minmax(220px, 2.4fr)', mono: true, cell: (r) => <span title={r.content}>{r.content}</span> },
    { key: 'hash', head: 'Hash', width: '100px', mono: true, cell: (r) => <span title={r.hash}>{shortDigest(r.hash)}</span> },
  ];
  const shown = book === 'custody' ? custody : audit;
  const total = shown.data?.total ?? 0;
  return (
    <View over={shown.data ? `${total.toLocaleString('en')} entries${total > SHOWN ? `, the newest ${SHOWN} shown` : ''}` : ' '} title="Ledgers" actions={(
      <>
        <Segmented<Book> label="Ledger" value={book} onChange={setBook} options={[{ value: 'custody', label: 'custody' }, { value: 'audit', label: 'audit' }]} />
        {isManager ? <Button keys="B" onPress={() => { setBundling(true); }}>Bundle of a period</Button> : null}
        <Button isPending={sign.isPending} onPress={() => { sign.mutate({}, { onSuccess: ({ file }) => { notes.say(`Signed and kept: ${file}`); }, onError: (e) => { notes.complain(e.failure); } }); }}>Sign a checkpoint</Button>
        <Button kind="main" keys="V" isPending={verify.isPending} onPress={run}>{verify.isPending ? 'Verifying' : 'Verify'}</Button>
      </>
    )}>
      {bundling ? <PeriodBundle onClose={() => { setBundling(false); }} /> : null}
      <div className="page page-sheet">
        {verify.isPending ? <Verifying task={task} onStop={stop} /> : null}
        {result ? <VerificationSheet result={result} /> : null}
        {shown.isError ? <Trouble {...shown.error.failure} /> : null}
        {shown.isPending ? <Working what="Reading the ledger" /> : null}
        <div className="grow" style={{ minHeight: 0 }}>
          {book === 'custody' && custody.data ? <DataTable label="Custody ledger" rows={custody.data.rows} columns={custodyColumns} rowKey={(r) => String(r.seq)} onOpen={(r) => { go({ view: 'case', id: r.caseId }); }}
            empty={<Empty title="No entry yet"><p>The first entry is written when a case is taken in.</p></Empty>} /> : null}
          {book === 'audit' && audit.data ? <DataTable label="Audit ledger" rows={audit.data.rows} columns={auditColumns} rowKey={(r) => String(r.seq)} empty={<Empty title="No entry yet" />} /> : null}
        </div>
      </div>
    </View>
  );
}
