import type { ItemView } from '../../app/contract/cases.ts';
import type { StoneFolder } from '../../app/contract/work.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { Glyph } from '../look/glyph.tsx';
import { placeAddress } from '../router.ts';
import { ProtocolList } from './protocol-list.tsx';
import { shownConclusion } from './shown-conclusion.ts';
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
                  <Glyph of={shownConclusion(stone)} /><span className="one-line">{stone.label}{stone.position ? ` ${stone.position}` : ''}{isOneLoose(item) ? ' loose' : ''}</span>
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

/** The case at the left: its stones with their signs, and what was done on this one. */
export function CaseTree({ folder, onTest }: { readonly folder: StoneFolder; readonly onTest: (method: MethodId) => void }) {
  return <aside className="stone-tree"><Tree folder={folder} /><ProtocolList folder={folder} onTest={onTest} /></aside>;
}
