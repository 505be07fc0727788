import type { CaseView } from '../../app/contract/cases.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { Glyph } from '../look/glyph.tsx';
import { placeAddress } from '../router.ts';
import { itemHeading } from './item-words.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
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
                <a key={s.id} className="tree-line tree-stone" href={placeAddress({ view: 'stone', id: s.id })}
                  title={`${s.label}: ${s.conclusion ? CONCLUSION_WORDS[s.conclusion] : 'open'}${s.stage === 'concluded' ? ', second person to confirm' : s.stage === 'disagreed' ? ', second person disagrees' : ''}`}>
                  <span className="row gap8 one-line"><Glyph of={shownConclusion(s)} /><span className="one-line">{s.label}{s.position ? <span className="quiet"> {s.position}</span> : null}</span></span>
                  {s.stage === 'concluded' ? <span className="quiet">?</span> : s.stage === 'disagreed' ? <span className="warn">!</span> : null}
                </a>
              ))}
            </div>
          ))}
        </div>
      ))}
    </nav>
  );
}
