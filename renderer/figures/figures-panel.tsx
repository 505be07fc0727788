import type { ReactNode } from 'react';
import { overTimeCsv } from '../../app/history/figures-csv.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { saveFile } from '../look/save-file.ts';
import { useAsk } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { AgreementSection } from './agreement-section.tsx';
import { ChecksSection } from './checks-section.tsx';
import { OverTimeSection } from './over-time-section.tsx';
import { PeriodStrip } from './period-strip.tsx';
import { useFiguresPeriod } from './use-figures-period.ts';
import './figures.css';

/** The laboratory's figures over time, for the manager. */
export function FiguresPanel({ choose, today, first }: { readonly choose: ReactNode; readonly today: string; readonly first: string | null }) {
  const [shown, change] = useFiguresPeriod(today, first);
  const span = { from: shown.from, to: shown.to };
  const figures = useAsk('figures.overTime', shown, { keep: true });
  const agreement = useAsk('figures.agreement', span, { keep: true });
  const checks = useAsk('figures.checks', span, { keep: true });
  const failure = figures.error?.failure ?? null;
  const save = () => {
    if (figures.data) saveFile('figures-over-time.csv', 'text/csv', overTimeCsv(figures.data));
  };
  return (
    <View over={`${shown.from} to ${shown.to}`} title="Figures" actions={<>{choose}<Button isDisabled={!figures.data || first === null} onPress={save}>Save as CSV</Button></>}>
      <div className="page page-sheet figures-page">
        <PeriodStrip shown={shown} change={change} today={today} first={first ?? today} failure={failure} />
        {failure !== null && Object.keys(failure.fields ?? {}).length === 0 ? <Trouble {...failure} /> : null}
        {first === null ? <Empty title="Nothing to count yet"><p>Figures come with the first case: press N to take one in.</p></Empty> : (
          <>
            {figures.isPending ? <Working what="Counting" /> : null}
            {figures.data ? <OverTimeSection figures={figures.data} /> : null}
            {agreement.data ? <AgreementSection agreement={agreement.data} /> : null}
            {checks.data ? <ChecksSection {...checks.data} /> : null}
          </>
        )}
      </div>
    </View>
  );
}
