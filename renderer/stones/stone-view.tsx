import { useEffect, useState } from 'react';
import type { RunView, StoneFolder } from '../../app/contract/work.ts';
import { METHOD_IDS, type MethodId } from '../../app/domain/method.ts';
import type { Role } from '../../app/domain/role.ts';
import { ConcludeSheet } from '../conclude/conclude-sheet.tsx';
import { ConfirmSheet } from '../conclude/confirm-sheet.tsx';
import { ReadFirstSheet } from '../conclude/read-first-sheet.tsx';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { showDue } from '../look/time.ts';
import { hasMeasurable } from '../photographs/stone-on-photographs.tsx';
import { useAsk } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { NewReport } from '../reports/builder/new-report.tsx';
import { AddTest } from '../runs/add-test.tsx';
import { RunSeen } from '../runs/run-seen.tsx';
import { RunsTable } from '../runs/runs-table.tsx';
import { useFileDrop } from '../runs/use-file-drop.ts';
import { View } from '../shell/view.tsx';
import { SpectrumSection } from '../spectrum/spectrum-view.tsx';
import { AddFinding } from './add-finding.tsx';
import { CaseTree } from './case-tree.tsx';
import { ConclusionHistory } from './conclusion-history.tsx';
import { FindingsMargin } from './findings-margin.tsx';
import { ProposalNote } from './proposal-note.tsx';
import { neighbour } from './stone-order.ts';
import { custodyTag, stoneWords } from './stone-words.ts';
import { useNarrow } from './use-narrow.ts';
import '../runs/runs.css';
import './stone.css';

type Sheet =
  | { readonly is: 'test'; readonly method: MethodId | null; readonly files: readonly File[] }
  | { readonly is: 'conclude' } | { readonly is: 'confirm' } | { readonly is: 'finding' } | { readonly is: 'report' };

const BENCH_ROLES: readonly Role[] = ['examiner', 'second-examiner', 'manager'];
const NO_FILES: readonly File[] = [];

/** The sheet that an address asks for: test, test-<method>, conclude, confirm. */
function sheetOf(panel: string | undefined): Sheet | null {
  if (panel === 'conclude' || panel === 'confirm') return { is: panel };
  if (panel !== 'test' && !panel?.startsWith('test-')) return null;
  return { is: 'test', method: METHOD_IDS.find((m) => panel === `test-${m}`) ?? null, files: NO_FILES };
}

/** The newest run that has a curve, else the newest run. */
function firstRun(runs: readonly RunView[]): RunView | null {
  const newest = runs.toSorted((a, b) => b.at.localeCompare(a.at) || b.number.localeCompare(a.number, 'en', { numeric: true }));
  return newest.find((run) => run.spectra.length > 0) ?? newest[0] ?? null;
}

/** One stone: its tests in the middle, what they say in the margin, its case at the left. */
export default function StoneView({ stoneId, panel }: { readonly stoneId: string; readonly panel?: string }) {
  const folder = useAsk('stones.folder', { stoneId }, { keep: true });
  if (folder.isError) return <View title="Stone"><div className="page page-sheet"><Trouble {...folder.error.failure} /></div></View>;
  if (folder.isPending || folder.data.stone.id !== stoneId) return <View title="Stone"><Working what="Reading the stone" /></View>;
  return <Stone folder={folder.data} panel={panel} />;
}

function Stone({ folder, panel }: { readonly folder: StoneFolder; readonly panel: string | undefined }) {
  const { laboratory, me } = useHouse();
  const { stone, item, runs } = folder;
  const zone = laboratory.zone;
  const bench = useAsk('bench.today', {}, { keep: true });
  const today = bench.data?.today ?? '';
  const narrow = useNarrow();
  const [treeByHand, setTree] = useState<boolean | null>(null);
  const tree = treeByHand ?? !narrow;
  const [sheet, setSheet] = useState<Sheet | null>(() => sheetOf(panel));
  useEffect(() => { const asked = sheetOf(panel); if (asked) setSheet(asked); }, [panel]);
  const [chosenRun, setRun] = useState<string | null>(null);
  const run = runs.find((r) => r.id === chosenRun) ?? firstRun(runs);

  const close = () => {
    setSheet(null);
    if (panel) go({ view: 'stone', id: stone.id });
  };
  const mayTest = me !== null && me.roles.some((role) => BENCH_ROLES.includes(role));
  const newest = folder.conclusions.toSorted((a, b) => b.ordinal - a.ordinal)[0];
  const { withheld } = folder;
  const awaits = withheld !== null || (newest !== undefined && newest.confirmation === null);
  const openTest = (method: MethodId | null, files: readonly File[] = NO_FILES) => { setSheet({ is: 'test', method, files }); };
  const step = (by: 1 | -1) => {
    const next = neighbour(folder.case, stone.id, by);
    if (next) go({ view: 'stone', id: next.id });
  };
  const free = sheet === null;
  const over = useFileDrop((files) => { openTest(null, files); }, free);
  useKey('T', () => { openTest(null); }, free);
  useKey('O', () => { if (mayTest) setSheet({ is: 'finding' }); }, free);
  useKey('R', () => { setSheet({ is: 'report' }); }, free);
  useKey('Mod+Enter', () => { setSheet({ is: awaits ? 'confirm' : 'conclude' }); }, free);
  useKey('W', () => { go({ view: 'pair', id: item.id }); }, free && hasMeasurable(item));
  useKey('[', () => { step(-1); }, free);
  useKey(']', () => { step(1); }, free);
  useKey('C', () => { setTree(!tree); }, free);

  const due = folder.case.dueOn === null ? '' : today === '' ? folder.case.dueOn : `due ${showDue(folder.case.dueOn, today)}`;
  const late = folder.case.dueOn !== null && today !== '' && folder.case.dueOn < today && folder.case.state === 'open';
  const custody = custodyTag(item, zone, today);
  return (
    <View
      over={<><a className="mono" href={placeAddress({ view: 'case', id: folder.case.id })}>{folder.case.number}</a> · {folder.case.client.name}{due ? <> · <span className={late ? 'warn' : ''}>{late ? showDue(folder.case.dueOn!, today) : due}</span></> : null}</>}
      title={`Stone ${stone.label}`} beside={stoneWords(stone)}
      actions={(
        <>
          <span className={`tag stone-custody ${item.custody.differs ? 'warn' : ''}`} title={custody}>{item.custody.differs ? `${custody}; a weight differs` : custody}</span>
          {narrow || treeByHand === false ? <Button kind="quiet" keys="C" aria-expanded={tree} onPress={() => { setTree(!tree); }}>Case</Button> : null}
          <Button keys="R" onPress={() => { setSheet({ is: 'report' }); }}>Report</Button>
          <Button keys="T" onPress={() => { openTest(null); }}>Add a test</Button>
          {awaits && withheld === null ? <Button onPress={() => { setSheet({ is: 'conclude' }); }}>Conclude anew</Button> : null}
          {awaits
            ? <Button kind="main" keys="Mod+Enter" onPress={() => { setSheet({ is: 'confirm' }); }}>{withheld === null ? 'Answer as second person' : 'State your conclusion'}</Button>
            : <Button kind="main" keys="Mod+Enter" onPress={() => { setSheet({ is: 'conclude' }); }}>{newest ? 'Conclude anew' : 'Conclude'}</Button>}
        </>
      )}>
      <div className={`stone ${tree ? 'stone-with-tree' : ''} ${over ? 'stone-over' : ''}`}>
        {tree ? <CaseTree folder={folder} onTest={openTest} /> : null}
        <div className="stone-work">
          {run === null ? (
            <Empty title="No test yet">
              <p>Begin with whether it is diamond: a Raman or a photoluminescence run shows the diamond line, and nothing can be concluded about growth without it. Press <kbd className="keys">T</kbd>, or drop the instrument’s files anywhere on this page.</p>
              <div className="row gap8 empty-acts"><Button kind="main" onPress={() => { openTest(null); }}>Add the first test</Button></div>
            </Empty>
          ) : run.spectra.length > 0
            ? <SpectrumSection key={run.id} run={run} runs={runs} caseNumber={folder.case.number} stoneLabel={stone.label} />
            : <RunSeen run={run} />}
          {runs.length > 0 ? <RunsTable runs={runs} chosen={run?.id ?? null} zone={zone} onChoose={setRun} /> : null}
        </div>
        <aside className="stone-margin">
          <FindingsMargin folder={folder} active={free} mayDecide={mayTest} onRun={setRun} onAdd={() => { setSheet({ is: 'finding' }); }} />
          <ConclusionHistory conclusions={folder.conclusions} withheld={withheld} zone={zone} />
          <ProposalNote proposal={folder.proposal} onTest={openTest} />
        </aside>
      </div>
      {over ? <p className="stone-drop">Let go: the files are tried as a run of {stone.label} before anything is kept.</p> : null}
      {sheet?.is === 'test' ? <AddTest folder={folder} method={sheet.method} dropped={sheet.files} onClose={close} onKept={(kept) => { setRun(kept.id); close(); }} /> : null}
      {sheet?.is === 'finding' ? <AddFinding stoneId={stone.id} onClose={close} /> : null}
      {sheet?.is === 'report' ? <NewReport caseId={folder.case.id} subjectId={stone.id} onClose={close} /> : null}
      {sheet?.is === 'conclude' ? <ConcludeSheet folder={folder} onClose={close} /> : null}
      {sheet?.is === 'confirm' && withheld ? <ReadFirstSheet folder={folder} withheld={withheld} onClose={close} /> : null}
      {sheet?.is === 'confirm' && newest && !withheld ? <ConfirmSheet key={newest.id} folder={folder} conclusion={newest} onClose={close} /> : null}
    </View>
  );
}
