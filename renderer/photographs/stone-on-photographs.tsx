import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import type { PhotoAnalysisContent, PhotoAnalysisView } from '../../app/contract/images.ts';
import { decayFindings } from '../../app/images/decay-findings.ts';
import { pairFindings } from '../../app/images/pair-findings.ts';
import { polariserFindings } from '../../app/images/polariser-findings.ts';
import { Keys } from '../look/keys.tsx';
import { useAsk } from '../queries.ts';
import { placeAddress } from '../router.ts';

type Statement = { readonly code: string; readonly statement: string };

/** Lights of photographs on which something can be measured. */
const MEASURABLE: readonly ItemView['photographs'][number]['light'][] = ['long-wave', 'short-wave', 'polarised'];

/** Whether an item has a photograph on which something can be measured. */
export const hasMeasurable = (item: ItemView): boolean => item.photographs.some(({ light }) => MEASURABLE.includes(light));

/** What one kept analysis says of this stone. */
function statementsOf(content: PhotoAnalysisContent, stoneId: string): readonly Statement[] {
  switch (content.kind) {
    case 'pair': return content.result.stones.filter((one) => one.stoneId === stoneId).flatMap((one) => pairFindings(one, content.result));
    case 'decay': return content.result.stones.filter((one) => one.stoneId === stoneId).flatMap((one) => decayFindings(one));
    case 'polarisers': return content.result.stones.filter((one) => one.stoneId === stoneId).flatMap((one) => (one.pattern ? polariserFindings(one.pattern) : []));
  }
}

/** The newest analysis of each kind that has this stone. */
function newestOf(analyses: readonly PhotoAnalysisView[], stoneId: string): { readonly id: string; readonly statements: readonly Statement[] }[] {
  const newest = new Map<PhotoAnalysisContent['kind'], { id: string; at: string; statements: readonly Statement[] }>();
  for (const { id, at, content } of analyses) {
    const statements = statementsOf(content, stoneId);
    const before = newest.get(content.kind);
    if (statements.length > 0 && (before === undefined || before.at < at)) newest.set(content.kind, { id, at, statements });
  }
  return [...newest.values()];
}

/** What the photographs of its piece say of a stone, and the way to measure them. Nothing where there is no photograph to measure. */
export function StoneOnPhotographs({ item, stone }: { readonly item: ItemView; readonly stone: StoneSummary }) {
  const measurable = hasMeasurable(item);
  const analyses = useAsk('images.ofItem', measurable ? { itemId: item.id } : null, { keep: true });
  if (!measurable || !analyses.data) return null;
  const said = newestOf(analyses.data, stone.id);
  return (
    <section className="stone-on-photographs" aria-label="On the photographs">
      <p className="label">On the photographs</p>
      {said.length === 0 ? <p className="quiet">Not measured on the photographs yet.</p> : null}
      <ul>{said.map(({ id, statements }) => <li key={id}>{statements.map((one) => <a key={one.code} href={placeAddress({ view: 'pair', id: item.id, panel: id })}>{one.statement}</a>)}</li>)}</ul>
      <a className="second" href={placeAddress({ view: 'pair', id: item.id })}>Measure photographs <Keys of="W" /></a>
    </section>
  );
}
