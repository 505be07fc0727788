import { useState } from 'react';
import { useHouse } from '../house/house-context.tsx';
import { rolesText } from '../house/roles-text.ts';
import { WhoWorks } from '../house/who-works.tsx';
import { Button } from '../look/button.tsx';
import { Mark } from '../look/mark.tsx';
import { placeAddress, usePlace, type Place } from '../router.ts';
import { LOCK_CHORD, useKey } from '../keys/keymap.ts';
import { useAsk, useChange } from '../queries.ts';
import { useStrayDrop } from '../runs/use-stray-drop.ts';
import './shell.css';

type Entry = { readonly place: Place; readonly name: string; readonly count?: string; readonly warn?: boolean };

/** The house's rooms at the left, how much waits in each, and who works here. */
export function Rail() {
  const house = useHouse();
  useStrayDrop();
  const place = usePlace();
  const bench = useAsk('bench.today', house.me ? {} : null, { keep: true });
  const [choosing, setChoosing] = useState(house.me === null);
  const locking = useChange('people.lock');
  const lock = () => { locking.mutate({}); };
  useKey(LOCK_CHORD, lock, house.me !== null && !house.status.locked && !house.laboratory.isDemonstration);
  const today = bench.data;
  const waiting = today ? today.overdue.length + today.dueSoon.length + today.toConfirm.length : 0;
  const shown = place.view === 'case' || place.view === 'lot' || place.view === 'piece' || place.view === 'intake' ? 'cases' : place.view === 'stone' ? 'stones' : place.view === 'report' || place.view === 'check' || place.view === 'bundles' || place.view === 'bundle' ? 'reports' : place.view === 'batch' ? 'instruments' : place.view;
  const entries: readonly Entry[] = [
    { place: { view: 'bench' }, name: 'Bench', count: waiting ? String(waiting) : undefined },
    { place: { view: 'cases' }, name: 'Cases', count: today ? String(today.counts.cases) : undefined },
    { place: { view: 'stones' }, name: 'Stones', count: today ? String(today.counts.stones) : undefined },
    { place: { view: 'custody' }, name: 'Custody', count: today ? (today.house.itemsOverdue ? `${today.house.itemsOverdue} !` : String(today.house.itemsInCustody)) : undefined, warn: (today?.house.itemsOverdue ?? 0) > 0 },
    { place: { view: 'reports' }, name: 'Reports', count: today ? String(today.counts.reports) : undefined },
    { place: { view: 'instruments' }, name: 'Instruments', count: today?.counts.instrumentsToCheck ? `${today.counts.instrumentsToCheck} !` : undefined, warn: true },
    { place: { view: 'history' }, name: 'History' },
    { place: { view: 'ledgers' }, name: 'Ledgers' },
    { place: { view: 'house' }, name: 'House' },
  ];
  return (
    <nav className="rail" aria-label="Rooms">
      <div className="rail-brand"><Mark />Culet</div>
      {entries.map((e) => (
        <a key={e.place.view} href={placeAddress(e.place)} aria-current={shown === e.place.view ? 'page' : undefined}>
          <span>{e.name}</span>{e.count ? <span className="mono">{e.count}</span> : null}
        </a>
      ))}
      <div className="rail-foot">
        {house.laboratory.isDemonstration ? <span className="invented">invented data</span> : null}
        {house.me && !house.laboratory.isDemonstration ? <Button kind="quiet" keys={LOCK_CHORD} onPress={lock}>Lock</Button> : null}
        <Button kind="quiet" onPress={() => { setChoosing(true); }}>
          {house.me ? <><span className="two-lines" title={house.me.name}>{house.me.name}</span><span className="two-lines">{rolesText(house.me.roles)}</span></> : 'Say who works here'}
        </Button>
      </div>
      {choosing ? <WhoWorks onClose={() => { setChoosing(false); }} /> : null}
    </nav>
  );
}
