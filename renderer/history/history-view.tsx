import { FiguresPanel } from '../figures/figures-panel.tsx';
import { useHouse } from '../house/house-context.tsx';
import { Segmented } from '../look/choice.tsx';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { TrialsPanel } from '../trials/trials-panel.tsx';
import { StonesHistory } from './stones-history.tsx';
import './history.css';

const PANELS = ['stones', 'figures', 'trials'] as const;
type Panel = (typeof PANELS)[number];

/** What the laboratory looks back on. The figures and the trials are the manager's. */
export default function HistoryView({ panel }: { readonly panel?: string | undefined }) {
  const { me } = useHouse();
  const choices = useAsk('history.choices', {}, { keep: true });
  const offered = me?.roles.includes('manager') === true ? PANELS : PANELS.slice(0, 1);
  const shown = offered.find((one) => one === panel) ?? 'stones';
  const choose = <Segmented<Panel> label="Show" value={shown} onChange={(value) => { go({ view: 'history', panel: value }); }} options={offered.map((value) => ({ value, label: value }))} />;
  if (shown !== 'stones') {
    if (!choices.data) return null;
    const { today, firstCounted } = choices.data;
    return shown === 'figures' ? <FiguresPanel choose={choose} today={today} first={firstCounted} /> : <TrialsPanel choose={choose} today={today} first={firstCounted} />;
  }
  return <StonesHistory choose={offered.length > 1 ? choose : null} />;
}
