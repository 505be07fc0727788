import type { ItemView } from '../../app/contract/cases.ts';
import type { AnalysisOf } from '../../app/contract/images.ts';
import { pairFindings } from '../../app/images/pair-findings.ts';
import type { PairResult } from '../../app/images/pair-result.ts';
import { countWords } from '../../app/report/count-words.ts';
import { useHouse } from '../house/house-context.tsx';
import { Choice } from '../look/choice.tsx';
import { showMoment } from '../look/time.ts';
import { placeAddress } from '../router.ts';
import { PairTable } from './pair-table.tsx';
import { Propose } from './propose.tsx';
import { RatioPlot } from './ratio-plot.tsx';

const FROM_WORDS: Readonly<Record<PairResult['stopsFrom'], string>> = { exif: 'from the files', stated: 'as stated', 'assumed-equal': 'both taken as exposed alike' };

/** "laid on one another to 0.03 points (40 of 40 places agree)" */
function besideWords({ alignment, stops, stopsFrom }: PairResult): string {
  const more = Math.abs(stops) < 0.005 ? '' : `, ${Math.abs(stops).toFixed(2)} stops ${stops > 0 ? 'more' : 'less'} under short-wave`;
  return `Laid on one another to ${alignment.error.toFixed(2)} points (${alignment.agreeing} of ${alignment.compared} places agree). Exposure ${FROM_WORDS[stopsFrom]}${more}. Linear light, stray light taken off.`;
}

type Props = {
  readonly item: ItemView; readonly analysis: AnalysisOf<'pair'>; readonly others: readonly AnalysisOf<'pair'>[];
  readonly selected: string | null; readonly onSelect: (markId: string) => void; readonly onOpen: (analysisId: string) => void; readonly onAnew: () => void;
};

/** What the comparison says: the ratios, the stones that stand out, and what may be proposed from it. */
export function PairMargin({ item, analysis, others, selected, onSelect, onOpen, onAnew }: Props) {
  const { laboratory } = useHouse();
  const { result } = analysis.content;
  const out = result.stones.filter((stone) => stone.standsOut);
  const stone = result.stones.find((one) => one.markId === selected);
  const labelOf = (stoneId: string | null) => item.stones.find((one) => one.id === stoneId)?.label ?? null;
  const run = stone ? analysis.runs.find((one) => one.stoneId === stone.stoneId)?.run : undefined;
  return (
    <aside className="piece-margin" aria-label="Long-wave against short-wave">
      <section className="pair-head">
        <h2>{out.length === 0 ? 'No stone stands out' : `${countWords(out.length, 'stone')} ${out.length === 1 ? 'stands' : 'stand'} out`}</h2>
        <p className="second">{besideWords(result)}</p>
        {others.length > 1 ? <Choice label="Comparison" hideLabel value={analysis.id} onChange={onOpen} options={others.map((one) => ({ value: one.id, label: `${showMoment(one.at, laboratory.zone)}, ${one.by}` }))} /> : <p className="quiet">{showMoment(analysis.at, laboratory.zone)}, {analysis.by}</p>}
      </section>
      <RatioPlot result={result} selected={selected} onSelect={onSelect} />
      {result.notes.length > 0 ? <ul className="map-gaps">{result.notes.map((note) => <li key={note}>{note}</li>)}</ul> : null}
      {stone ? (
        <section className="pair-stone" aria-label={`What the photographs say of mark ${stone.number}`}>
          <h3>Mark {stone.number}{labelOf(stone.stoneId) ? <>, <a href={placeAddress({ view: 'stone', id: stone.stoneId! })}>{labelOf(stone.stoneId)}</a></> : ', tied to no stone'}</h3>
          <ul className="mark-findings">{pairFindings(stone, result).map((fact) => <li key={fact.code}>{fact.statement}</li>)}</ul>
          <p className="quiet">{run ? `Proposed with run ${run}.` : 'Standing out is no conclusion: it says which stone to test next.'}</p>
        </section>
      ) : null}
      <PairTable result={result} labelOf={labelOf} selected={selected} onSelect={onSelect} />
      <Propose analysis={analysis} stones={result.stones} pictures="both photographs" onAnew={onAnew} />
    </aside>
  );
}
