import { useEffect, useState } from 'react';
import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import { METHODS } from '../../app/domain/method.ts';
import { numberMark, tieMark } from '../../app/piece/edit-marks.ts';
import { MARK_LIMITS, type Mark } from '../../app/piece/mark.ts';
import { findingWords } from '../../app/report/finding-words.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showMoment } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { placeAddress } from '../router.ts';
import { splitFindings, findingToken } from '../stones/finding-weight.ts';
import { shownConclusion } from '../stones/shown-conclusion.ts';
import { stoneWords } from '../stones/stone-words.ts';
import { WithNumbers } from '../stones/with-numbers.tsx';
import { PhotographLine } from './photograph-line.tsx';
import { stoneSays } from './stone-glyph.ts';

const NO_STONE = 'none';

function NumberField({ mark, onNumber }: { readonly mark: Mark; readonly onNumber: (number: number) => void }) {
  const [text, setText] = useState(String(mark.number));
  useEffect(() => { setText(String(mark.number)); }, [mark.number]);
  const number = /^\d+$/.test(text.trim()) ? Number(text) : NaN;
  const fits = number >= 1 && number <= MARK_LIMITS.highestNumber;
  const take = () => { if (fits && number !== mark.number) onNumber(number); };
  return (
    <span className="mark-number-field" onKeyDown={(e) => { if (e.key === 'Enter') take(); }}>
      <Field label="Number" mono value={text} onChange={setText} onBlur={take} error={fits ? undefined : `A whole number from 1 to ${MARK_LIMITS.highestNumber}.`} />
    </span>
  );
}

/** What is known of the stone under a mark, and the way to it. */
function StoneNotes({ stone }: { readonly stone: StoneSummary }) {
  const { laboratory } = useHouse();
  const folder = useAsk('stones.folder', { stoneId: stone.id });
  const findings = folder.data ? splitFindings(folder.data.findings).standing : [];
  const pictures = folder.data?.item.photographs.filter((photo) => photo.stoneId === stone.id) ?? [];
  return (
    <>
      <div className="mark-stone">
        <h3><Glyph of={shownConclusion(stone)} /><span>{stoneSays(stone)}</span></h3>
        <p className="second">{stoneWords(stone)}</p>
        <p><a className="link" href={placeAddress({ view: 'stone', id: stone.id })}>Open stone {stone.label} <kbd className="keys" aria-hidden="true">O</kbd></a></p>
      </div>
      {folder.isPending ? <Working what="Reading the stone" /> : null}
      {folder.data ? (
        <>
          <section><p className="label">Findings</p>
            {findings.length === 0 ? <p className="second">None yet.</p> : null}
            <ul className="mark-findings">{findings.map((f) => (
              <li key={f.id} style={{ borderLeftColor: `var(--${findingToken(f.supports)})` }}><p><WithNumbers text={f.statement} /></p><p className="note-from">{[f.run ?? 'own observation', findingWords(f.strength, f.supports), f.state === 'accepted' ? 'accepted' : 'to decide'].join(' · ')}</p></li>
            ))}</ul>
          </section>
          <section><p className="label">Runs</p>
            {folder.data.runs.length === 0 ? <p className="second">Not tested yet. <a className="link" href={placeAddress({ view: 'stone', id: stone.id, panel: 'test' })}>Add a test</a></p> : null}
            <ul className="mark-runs">{folder.data.runs.map((run) => <li key={run.id}><span className="mono">{run.number}</span> <span>{METHODS[run.method].name}</span> <span className="quiet">{showMoment(run.at, laboratory.zone)}</span></li>)}</ul>
          </section>
          {pictures.length > 0 ? <section><p className="label">Photographs of this stone</p><ul className="mark-pictures">{pictures.map((photo) => <PhotographLine key={photo.id} photograph={photo} />)}</ul></section> : null}
        </>
      ) : null}
    </>
  );
}

/** The selected mark: its number, the stone it is tied to, and what that stone's tests say. */
export function MarkPanel({ mark, marks, item, onChange, onRemove, onLeave }: {
  readonly mark: Mark; readonly marks: readonly Mark[]; readonly item: ItemView;
  readonly onChange: (alter: (marks: readonly Mark[]) => Mark[]) => void; readonly onRemove: () => void; readonly onLeave: () => void;
}) {
  const stone = item.stones.find((one) => one.id === mark.stoneId) ?? null;
  const elsewhere = new Map(marks.filter((one) => one.id !== mark.id && one.stoneId !== null).map((one) => [one.stoneId, one.number]));
  return (
    <section className="mark-panel" aria-label={`Mark ${mark.number}`}>
      <div className="mark-fields">
        <NumberField mark={mark} onNumber={(number) => { onChange((now) => numberMark(now, mark.id, number)); }} />
        <Choice className="grow" label="Stone" value={mark.stoneId ?? NO_STONE} onChange={(id) => { onChange((now) => tieMark(now, mark.id, id === NO_STONE ? null : id)); }}
          options={[{ value: NO_STONE, label: 'no stone yet' }, ...item.stones.map((s) => ({ value: s.id, label: `${s.label}${s.position ? ` ${s.position}` : ''}${elsewhere.has(s.id) ? ` (mark ${elsewhere.get(s.id)})` : ''}` }))]} />
      </div>
      <div className="row gap8 mark-acts"><Button kind="quiet" keys="N" onPress={onLeave}>Next</Button><Button kind="quiet" keys="Delete" onPress={onRemove}>Remove the mark</Button></div>
      {stone ? <StoneNotes key={stone.id} stone={stone} /> : <p className="second">Choose the stone that sits here. Its conclusion, findings and runs then stand on the mark.</p>}
    </section>
  );
}
