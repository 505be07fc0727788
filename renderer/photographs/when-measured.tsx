import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import { useHouse } from '../house/house-context.tsx';
import { Choice } from '../look/choice.tsx';
import { showMoment } from '../look/time.ts';

/** When and by whom a measurement was made; a choice where there are several. */
export function WhenMeasured({ analysis, others, onOpen }: { readonly analysis: PhotoAnalysisView; readonly others: readonly PhotoAnalysisView[]; readonly onOpen: (analysisId: string) => void }) {
  const { laboratory } = useHouse();
  const words = ({ at, by }: PhotoAnalysisView) => `${showMoment(at, laboratory.zone)}, ${by}`;
  if (others.length < 2) return <p className="quiet">{words(analysis)}</p>;
  return <Choice label="Measurement" hideLabel value={analysis.id} onChange={onOpen} options={others.map((one) => ({ value: one.id, label: words(one) }))} />;
}
