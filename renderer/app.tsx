import { lazy, Suspense, useEffect } from 'react';
import { HouseContext } from './house/house-context.tsx';
import { Palette } from './keys/palette.tsx';
import { Trouble, Working } from './look/empty.tsx';
import { LockView } from './people/lock-view.tsx';
import { noteUnlocked } from './people/lock-state.ts';
import { RecoverySheet } from './people/recovery-sheet.tsx';
import { SignInView } from './people/sign-in-view.tsx';
import { useStay } from './people/use-stay.ts';
import { useAsk } from './queries.ts';
import { placeAddress, usePlace, type Place } from './router.ts';
import { FallenView } from './shell/fallen-view.tsx';
import { Rail } from './shell/rail.tsx';
import { Start } from './start/start.tsx';

// Each view is fetched when somebody goes there: the first screen needs neither plots nor forms.
const BenchView = lazy(() => import('./bench/bench-view.tsx'));
const CasesView = lazy(() => import('./cases/cases-view.tsx'));
const CaseView = lazy(() => import('./cases/case-view.tsx'));
const IntakeView = lazy(() => import('./intake/intake-view.tsx'));
const StonesView = lazy(() => import('./stones/stones-view.tsx'));
const StoneView = lazy(() => import('./stones/stone-view.tsx'));
const LotView = lazy(() => import('./lots/lot-view.tsx'));
const BundlesView = lazy(() => import('./bundles/bundles-view.tsx'));
const BundleView = lazy(() => import('./bundles/bundle-view.tsx'));
const CheckView = lazy(() => import('./reports/check-view.tsx'));
const PieceView = lazy(() => import('./piece/piece-view.tsx'));
const CustodyOverview = lazy(() => import('./custody/custody-view.tsx'));
const MeasureView = lazy(() => import('./photographs/measure-view.tsx'));
const ReportsView = lazy(() => import('./reports/reports-view.tsx'));
const BuilderView = lazy(() => import('./reports/builder/builder-view.tsx'));
const InstrumentsView = lazy(() => import('./instruments/instruments-view.tsx'));
const BatchView = lazy(() => import('./batch/batch-view.tsx'));
const LedgersView = lazy(() => import('./ledgers/ledgers-view.tsx'));
const HistoryView = lazy(() => import('./history/history-view.tsx'));
const HouseView = lazy(() => import('./house/house-view.tsx'));

function Here({ place }: { readonly place: Place }) {
  switch (place.view) {
    case 'bench': return <BenchView />;
    case 'cases': return <CasesView />;
    case 'case': return <CaseView key={place.id} caseId={place.id} />;
    case 'intake': return <IntakeView />;
    case 'stones': return <StonesView />;
    case 'stone': return <StoneView key={place.id} stoneId={place.id} panel={place.panel} />;
    case 'lot': return <LotView key={place.id} itemId={place.id} panel={place.panel} />;
    case 'piece': return <PieceView key={place.id} itemId={place.id} mapId={place.panel} />;
    case 'custody': return <CustodyOverview />;
    case 'pair': return <MeasureView key={place.id} itemId={place.id} panel={place.panel} />;
    case 'reports': return <ReportsView />;
    case 'report': return <BuilderView key={place.id} draftId={place.id} />;
    case 'check': return <CheckView />;
    case 'bundles': return <BundlesView />;
    case 'bundle': return <BundleView key={place.id} id={place.id} {...(place.panel === undefined ? {} : { folder: place.panel })} />;
    case 'instruments': return <InstrumentsView />;
    case 'batch': return <BatchView />;
    case 'ledgers': return <LedgersView />;
    case 'history': return <HistoryView panel={place.panel} />;
    case 'house': return <HouseView />;
  }
}

export function App() {
  const status = useAsk('casebook.status', {}, { keep: true });
  const place = usePlace();
  const locked = status.data?.locked ?? false;
  useStay(status.data?.me !== undefined && status.data.me !== null && !locked, status.data?.laboratory?.settings.idleMinutes ?? 10);
  useEffect(() => { if (!locked) noteUnlocked(); }, [locked]);
  if (status.isPending) return <Working what="Opening the casebook" />;
  if (status.isError) return <div className="page"><Trouble {...status.error.failure} /></div>;
  const { laboratory, people, me } = status.data;
  if (status.data.state !== 'open' || !laboratory) return <Start status={status.data} />;
  if (me === null && !laboratory.isDemonstration) return <SignInView laboratory={laboratory} people={people} />;
  return (
    <HouseContext.Provider value={{ laboratory, people, me, status: status.data }}>
      <div className="shell">
        <Rail />
        <main style={{ minWidth: 0, minHeight: 0 }}>
          {/* Until somebody is named, nothing may be read: the rail asks who works here. */}
          {me ? <FallenView place={placeAddress(place)}><Suspense fallback={<Working what="Opening" />}><Here place={place} /></Suspense></FallenView> : null}
        </main>
        {me ? <Palette /> : null}
      </div>
      {locked ? <LockView /> : <RecoverySheet />}
    </HouseContext.Provider>
  );
}
