import type { ItemView } from '../../app/contract/cases.ts';
import type { StoneFolder } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { StoneOnPhotographs } from '../photographs/stone-on-photographs.tsx';
import { SmallMap } from '../piece/small-map.tsx';
import { placeAddress } from '../router.ts';
import { ProtocolList } from './protocol-list.tsx';
import { StoneSign, stoneTitle } from './stone-sign.tsx';
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
                <a key={stone.id} className={`tree-stone ${isOneLoose(item) ? 'tree-stone-loose' : ''}`} href={placeAddress({ view: 'stone', id: stone.id })} aria-current={stone.id === folder.stone.id ? 'page' : undefined} title={stoneTitle(stone)}><StoneSign stone={stone} after={isOneLoose(item) ? ' loose' : ''} /></a>
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
  return <aside className="stone-tree"><Tree folder={folder} /><SmallMap item={folder.item} stone={folder.stone} /><StoneOnPhotographs item={folder.item} stone={folder.stone} /><ProtocolList folder={folder} onTest={onTest} /></aside>;
}
