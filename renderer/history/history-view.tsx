import { useHouse } from '../house/house-context.tsx';
import { Segmented } from '../look/choice.tsx';
import { go } from '../router.ts';
import { StonesHistory } from './stones-history.tsx';
import './history.css';

type Panel = 'stones';
const PANELS: readonly { readonly value: Panel; readonly label: string }[] = [{ value: 'stones', label: 'stones' }];

/** What the laboratory looks back on. */
export default function HistoryView({ panel }: { readonly panel?: string | undefined }) {
  useHouse();
  const shown = PANELS.find(({ value }) => value === panel)?.value ?? 'stones';
  const choose = <Segmented<Panel> label="Show" value={shown} onChange={(value) => { go({ view: 'history', panel: value }); }} options={PANELS} />;
  return <StonesHistory choose={PANELS.length > 1 ? choose : null} />;
}
