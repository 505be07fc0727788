import type { CaseView } from '../../app/contract/cases.ts';
import { placeAddress } from '../router.ts';
import { itemHeading } from './item-words.ts';
import { StoneSign, stoneTitle } from '../stones/stone-sign.tsx';
import './cases.css';

/** Parcels, items and stones of a case; each stone with the sign of its conclusion. */
export function CaseTree({ case: c, chosen, onChoose }: {
  readonly case: CaseView; readonly chosen: string | null; readonly onChoose: (itemId: string | null) => void;
}) {
  return (
    <nav className="tree" aria-label="This case">
      <p className="label tree-title">This case</p>
      {c.parcels.map((p) => (
        <div key={p.id}>
          <button type="button" className="tree-line" onClick={() => { onChoose(null); }}>
            <span className="one-line" title={p.sealNumber ? `seal ${p.sealNumber}` : undefined}>Parcel {p.ordinal}{p.sealNumber ? <span className="quiet mono"> {p.sealNumber}</span> : null}</span>
            <span className="mono">{p.items.reduce((n, i) => n + (i.kind === 'lot' ? i.count ?? 0 : i.stones.length), 0)}</span>
          </button>
          {p.items.map((i) => (
            <div key={i.id}>
              <button type="button" className="tree-line tree-item" aria-current={chosen === i.id} onClick={() => { onChoose(i.id); }}><span className="one-line" title={i.declared}>{itemHeading(i)}</span><span className="mono">{i.kind === 'lot' ? i.count : i.stones.length}</span></button>
              {i.stones.map((s) => (
                <a key={s.id} className="tree-line tree-stone" href={placeAddress({ view: 'stone', id: s.id })} title={stoneTitle(s)}><StoneSign stone={s} /></a>
              ))}
            </div>
          ))}
        </div>
      ))}
    </nav>
  );
}
