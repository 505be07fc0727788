import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { LotResultView } from '../../app/contract/lots.ts';
import { LOT_OUTCOMES, OUTCOME_KEYS, OUTCOME_SHORT, type LotOutcome } from '../../app/lots/lot-outcome.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Empty } from '../look/empty.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showMoment } from '../look/time.ts';
import type { ResultEntryState } from './use-result-entry.ts';

const ROW_PX = 29;
const PAGE_ROWS = 15;
const byKey = new Map(LOT_OUTCOMES.map((outcome) => [OUTCOME_KEYS[outcome], outcome]));

function Row({ number, result, zone }: { readonly number: number; readonly result: LotResultView | undefined; readonly zone: string }) {
  return (
    <>
      <span className="mono to-right">{number}</span>
      {result === undefined ? <span className="quiet">–</span> : <span className="row gap8 one-line"><Glyph of={result.outcome} />{OUTCOME_SHORT[result.outcome]}</span>}
      <span className="quiet one-line">{result === undefined ? '' : [result.before === null ? '' : `was ${OUTCOME_SHORT[result.before]}`, result.source === 'imported' ? 'from a list' : result.source === 'folder' ? 'from its folder' : ''].filter(Boolean).join(' · ')}</span>
      <span className="quiet one-line" title={result?.at ? `${result.by}, ${showMoment(result.at, zone)}` : undefined}>{result === undefined ? '' : result.at === '' ? 'not kept yet' : result.by}</span>
    </>
  );
}

/** Outcomes by single keys: each goes to the next stone. Arrows, page keys, Home and End move; a number and Enter jumps; Backspace clears; Z takes the last back. */
export function ResultGrid({ numbers, entry, mayEnter }: { readonly numbers: readonly number[]; readonly entry: ResultEntryState; readonly mayEnter: boolean }) {
  const { laboratory } = useHouse();
  const { results } = entry;
  const standing = useMemo(() => new Map(results.map((one) => [one.number, one])), [results]);
  const [at, setAt] = useState(() => Math.max(0, numbers.findIndex((number) => !standing.has(number))));
  const [typed, setTyped] = useState('');
  const [said, setSaid] = useState('');
  const scroller = useRef<HTMLDivElement>(null);
  const virtual = useVirtualizer({ count: numbers.length, getScrollElement: () => scroller.current, estimateSize: () => ROW_PX, overscan: 20 });
  const current = Math.min(at, numbers.length - 1);
  useEffect(() => { scroller.current?.focus(); }, []);
  useEffect(() => { virtual.scrollToIndex(current, { align: 'auto' }); }, [current, virtual]);
  if (numbers.length === 0) return <Empty title="No stones to enter"><p>Count the lot or draw a list first.</p></Empty>;

  const move = (to: number) => { setAt(Math.min(numbers.length - 1, Math.max(0, to))); setTyped(''); };
  const enter = (outcome: LotOutcome) => {
    const number = numbers[current]!;
    entry.enter(number, outcome);
    setSaid(`Stone ${number}: ${OUTCOME_SHORT[outcome]}`);
    move(current + 1);
  };
  const undo = () => {
    const number = entry.undo();
    setSaid(number === null ? 'Nothing to take back.' : `Stone ${number}: taken back.`);
    if (number !== null && numbers.includes(number)) move(numbers.indexOf(number));
  };
  const jump = () => {
    const index = numbers.indexOf(Number(typed));
    if (index < 0) { setSaid(`Stone ${typed} is not in this list.`); setTyped(''); } else move(index);
  };
  const next = () => { const open = numbers.findIndex((number, i) => i > current && !standing.has(number)); move(open < 0 ? numbers.findIndex((number) => !standing.has(number)) : open); };
  const clear = () => { entry.enter(numbers[current]!, null); setSaid(`Stone ${numbers[current]!}: cleared.`); };
  const acts: Readonly<Record<string, () => void>> = {
    ArrowDown: () => { move(current + 1); }, ArrowUp: () => { move(current - 1); }, PageDown: () => { move(current + PAGE_ROWS); }, PageUp: () => { move(current - PAGE_ROWS); },
    Home: () => { move(0); }, End: () => { move(numbers.length - 1); }, Enter: () => { if (typed === '') next(); else jump(); }, Escape: () => { setTyped(''); },
    ...(mayEnter ? { Backspace: () => { if (typed === '') clear(); else setTyped(typed.slice(0, -1)); }, Delete: clear, Z: undo } : {}),
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
    const outcome = mayEnter ? byKey.get(key) : undefined;
    const act = /^\d$/.test(key) ? () => { setTyped(`${typed}${key}`.slice(0, 7)); } : outcome ? () => { enter(outcome); } : acts[key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  const first = standing.get(numbers[current]!);
  return (
    <div className="lot-grid">
      {mayEnter ? (
        <div className="lot-keys" role="group" aria-label="Outcome of the stone that is marked">
          {LOT_OUTCOMES.map((outcome) => <Button key={outcome} keys={OUTCOME_KEYS[outcome]} onPress={() => { enter(outcome); scroller.current?.focus(); }}>{OUTCOME_SHORT[outcome]}</Button>)}
          <span className="grow" />
          <Button kind="quiet" keys="Z" onPress={() => { undo(); scroller.current?.focus(); }}>Take back</Button>
        </div>
      ) : <p className="quiet">Results are entered by examiners.</p>}
      <div className="lot-grid-head lot-grid-row" aria-hidden="true"><span className="to-right">Stone</span><span>Outcome</span><span>Before, and from where</span><span>By</span></div>
      <div className="lot-grid-body" ref={scroller} role="listbox" tabIndex={0} aria-label="Results by stone" aria-activedescendant={`lot-row-${numbers[current]!}`} onKeyDown={onKey}>
        <div style={{ height: virtual.getTotalSize(), position: 'relative' }}>
          {virtual.getVirtualItems().map((v) => (
            <div key={v.index} id={`lot-row-${numbers[v.index]!}`} role="option" aria-selected={v.index === current} className={`lot-grid-row ${v.index === current ? 'lot-grid-current' : ''}`}
              style={{ transform: `translateY(${v.start}px)`, height: ROW_PX }} onClick={() => { setAt(v.index); }}>
              <Row number={numbers[v.index]!} result={standing.get(numbers[v.index]!)} zone={laboratory.zone} />
            </div>
          ))}
        </div>
      </div>
      <p className="lot-grid-foot row gap12">
        <span className="mono">{typed === '' ? `${current + 1} of ${numbers.length}` : `go to ${typed} ↵`}</span>
        <span className="quiet grow one-line" role="status" aria-live="polite">{said || (first ? OUTCOME_SHORT[first.outcome] : '')}</span>
        <span className="quiet">{entry.waiting > 0 ? 'keeping …' : 'all kept'}</span>
      </p>
    </div>
  );
}
