import type { ItemView } from '../../app/contract/cases.ts';
import type { StoneFolder } from '../../app/contract/work.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { isPossible } from '../../app/evidence/possible-methods.ts';
import { Glyph } from '../look/glyph.tsx';
import { placeAddress } from '../router.ts';
import { shortMethod } from '../runs/method-words.ts';
import { STAGE_WORDS } from './stage-words.ts';
import { itemWords } from './stone-words.ts';

/** A loose stone is its own item: one line says both. */
const isOneLoose = (item: ItemView): boolean => item.kind === 'loose' && item.stones.length === 1;

function Tree({ folder }: { readonly folder: StoneFolder }) {
  const { parcels } = folder.case;
  return (
    <nav aria-label="Stones of this case">
      <p className="label tree-title">This case</p>
      {parcels.map((parcel) => (
        <div key={parcel.id}>
          <p className="tree-parcel" title={parcel.sealNumber ? `seal ${parcel.sealNumber}` : undefined}><span>Parcel {parcel.ordinal}</span><span className="mono">{parcel.items.reduce((sum, item) => sum + (item.count ?? item.stones.length), 0)}</span></p>
          {parcel.items.map((item) => (
            <div key={item.id}>
              {isOneLoose(item) ? null : <p className="tree-item" title={item.declared}><span className="one-line">{item.label} {itemWords(item)}</span><span className="mono">{item.count ?? item.stones.length}</span></p>}
              {item.stones.map((stone) => (
                <a key={stone.id} className={`tree-stone ${isOneLoose(item) ? 'tree-stone-loose' : ''}`} href={placeAddress({ view: 'stone', id: stone.id })} aria-current={stone.id === folder.stone.id ? 'page' : undefined}
                  title={`${stone.label}: ${[stone.conclusion ? CONCLUSION_WORDS[stone.conclusion] : '', STAGE_WORDS[stone.stage]].filter(Boolean).join(', ')}`}>
                  <Glyph of={stone.conclusion ?? 'undetermined'} /><span className="one-line">{stone.label}{stone.position ? ` ${stone.position}` : ''}{isOneLoose(item) ? ' loose' : ''}</span>
                  {stone.stage === 'concluded' ? <span className="quiet">?</span> : stone.stage === 'disagreed' ? <span className="warn">!</span> : null}
                </a>
              ))}
            </div>
          ))}
        </div>
      ))}
    </nav>
  );
}

/** Which tests this stone has had, which would help next; the rest that is possible. */
function Tests({ folder, onTest }: { readonly folder: StoneFolder; readonly onTest: (method: MethodId) => void }) {
  const place = { mounted: folder.stone.mounted, setting: folder.item.setting };
  const next = folder.proposal.nextTests.map((test) => test.method);
  const done = new Map(METHOD_IDS.map((method) => [method, folder.runs.filter((run) => run.method === method)]));
  const rank = (method: MethodId): number => ((done.get(method)?.length ?? 0) > 0 ? 0 : next.includes(method) ? 1 : 2);
  const rows = METHOD_IDS.filter((method) => isPossible(method, place) || rank(method) === 0).toSorted((a, b) => rank(a) - rank(b));
  return (
    <section aria-label="Tests of this stone">
      <p className="label tree-title">Tests of {folder.stone.label}</p>
      {rows.map((method) => (
        <button key={method} type="button" className="tree-test" title={`${METHODS[method].name}: ${METHODS[method].tells}`} onClick={() => { onTest(method); }}>
          <span className="one-line">{shortMethod(method)}</span>
          <span className="mono">{rank(method) === 0 ? 'done' : rank(method) === 1 && method === next[0] ? 'next' : '–'}</span>
        </button>
      ))}
    </section>
  );
}

/** The case at the left: its stones with their signs, and what was done on this one. */
export function CaseTree({ folder, onTest }: { readonly folder: StoneFolder; readonly onTest: (method: MethodId) => void }) {
  return <aside className="stone-tree"><Tree folder={folder} /><Tests folder={folder} onTest={onTest} /></aside>;
}
