import { useState, type ReactNode } from 'react';
import type { KnownSampleView, TrialView } from '../../app/contract/figures.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { trialsCsv } from '../../app/history/figures-csv.ts';
import { endingOf } from '../../app/statistics/screening-figures.ts';
import { PeriodStrip } from '../figures/period-strip.tsx';
import { useFiguresPeriod } from '../figures/use-figures-period.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { Glyph } from '../look/glyph.tsx';
import { saveFile } from '../look/save-file.ts';
import { showDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { RatesSection } from './rates-section.tsx';
import { SampleForm } from './sample-form.tsx';
import { TakeBackForm } from './take-back-form.tsx';
import { TrialForm } from './trial-form.tsx';
import { WithdrawForm } from './withdraw-form.tsx';
import '../figures/figures.css';
import './trials.css';

type Sheet = 'sample' | 'trial' | { readonly is: 'withdraw'; readonly sample: KnownSampleView } | { readonly is: 'take-back'; readonly trial: TrialView } | null;

/** Whether an examination was right, in a word. */
function verdict(truth: string, outcome: Parameters<typeof endingOf>[0]): string {
  const ending = endingOf(outcome);
  if (ending === 'referred') return 'sent on';
  if (truth === 'natural') return ending === 'passed' ? 'right' : 'false alarm';
  return ending === 'passed' ? 'false natural' : outcome === truth ? 'right' : 'not natural: right, kind differs';
}

/** Samples of known origin, and what the house said of them. */
export function TrialsPanel({ choose, today, first }: { readonly choose: ReactNode; readonly today: string; readonly first: string | null }) {
  const { laboratory } = useHouse();
  const [shown, change] = useFiguresPeriod(today, first);
  const [sheet, setSheet] = useState<Sheet>(null);
  const found = useAsk('trials.list', { from: shown.from, to: shown.to }, { keep: true });
  const { data } = found;
  const canTry = data?.samples.some((sample) => sample.withdrawn === null) === true;
  useKey('N', () => { setSheet(canTry ? 'trial' : 'sample'); }, sheet === null && data !== undefined);
  const failure = found.error?.failure ?? null;
  return (
    <View over={data ? data.samples.length === 0 ? 'no known sample yet' : `${data.samples.length === 1 ? 'one known sample' : `${data.samples.length} known samples`}, ${data.trials.length === 1 ? 'one trial' : `${data.trials.length} trials`} in the period` : ' '} title="Trials" actions={(
      <>
        {choose}
        <Button isDisabled={!data || data.trials.length === 0} onPress={() => { if (data) saveFile('trials.csv', 'text/csv', trialsCsv(data)); }}>Save as CSV</Button>
        <Button onPress={() => { setSheet('sample'); }}>New sample</Button>
        <Button kind="main" keys="N" isDisabled={!canTry} onPress={() => { setSheet('trial'); }}>Enter a trial</Button>
      </>
    )}>
      <div className="page page-sheet figures-page">
        <PeriodStrip shown={shown} change={change} today={today} first={first ?? today} failure={failure} withSteps={false} />
        {failure !== null && Object.keys(failure.fields ?? {}).length === 0 ? <Trouble {...failure} /> : null}
        {found.isPending ? <Working what="Looking for trials" /> : null}
        {data && data.samples.length === 0 ? <Empty title="No known sample yet"><p>How often is the house wrong? Only stones of known origin can tell. Add a sample with “New sample”, let it come in like any client’s stone, and link it here after it was settled.</p></Empty> : null}
        {data && data.samples.length > 0 ? (
          <>
            <RatesSection key={data.assumedNotNatural} blind={data.blind} all={data.all} assumedNotNatural={data.assumedNotNatural} />
            <section className="figures-section" aria-label="Trials of the period">
              <h2>Trials of the period</h2>
              {data.trials.length === 0 ? <p className="figures-said">None yet. Press N to enter one.</p> : (
                <div className="figures-scroll trials-scroll" tabIndex={0} role="region" aria-label="Trials, table">
                  <table className="plain-table">
                    <thead><tr><th>Concluded</th><th>Sample, what it is</th><th>Was said to be</th><th>Verdict</th><th>Examiner</th><th>Stone</th><th>Instruments, remark</th><th>Counts</th></tr></thead>
                    <tbody>{data.trials.map((trial) => (
                      <tr key={trial.id} className={trial.withdrawn === null ? '' : 'taken-back'}>
                        <td className="mono">{showDay(trial.examinedAt, laboratory.zone)}</td><td className="wraps">{trial.sample}<br /><span className="quiet">{CONCLUSION_WORDS[trial.truth]}</span></td>
                        <td className="wraps"><span className="row gap8"><Glyph of={trial.outcome} /> {CONCLUSION_WORDS[trial.outcome]}</span></td>
                        <td className={trial.truth !== 'natural' && trial.outcome === 'natural' ? 'warn' : ''}>{verdict(trial.truth, trial.outcome)}</td>
                        <td className="wraps">{trial.examiner}{trial.blind ? '' : ', who knew'}</td>
                        <td>{trial.stone === null ? <span className="quiet">by hand</span> : <Button kind="quiet" onPress={() => { if (trial.stone) go({ view: 'stone', id: trial.stone.id }); }}>{trial.stone.caseNumber} {trial.stone.label}</Button>}</td>
                        <td className="wraps">{trial.instruments.join(', ')}{trial.instruments.length > 0 && trial.remark !== '' ? <br /> : null}{trial.remark === '' ? null : <span className="quiet">{trial.remark}</span>}</td>
                        <td className="wraps kept">{trial.withdrawn !== null ? `taken back ${showDay(trial.withdrawn.at, laboratory.zone)}, ${trial.withdrawn.by}: ${trial.withdrawn.reason}` : (
                          <span className="row gap8">{trial.counts ? null : <span>no: origin of the sample was wrong</span>}<Button kind="quiet" aria-label={`Take back the trial of ${trial.sample} of ${showDay(trial.examinedAt, laboratory.zone)}`} onPress={() => { setSheet({ is: 'take-back', trial }); }}>Take back</Button></span>
                        )}</td>
                      </tr>
                    ))}</tbody>
                  </table>
                </div>
              )}
            </section>
            <section className="figures-section" aria-label="Known samples">
              <h2>Known samples</h2>
              <div className="figures-scroll trials-scroll" tabIndex={0} role="region" aria-label="Known samples, table">
                <table className="plain-table">
                  <thead><tr><th>Name</th><th>It is</th><th>How that is known</th><th className="to-right">Trials</th><th>Added</th><th>In use</th></tr></thead>
                  <tbody>{data.samples.map((sample) => (
                    <tr key={sample.id}>
                      <td className="wraps">{sample.label}</td><td className="wraps"><span className="row gap8"><Glyph of={sample.truth} /> {CONCLUSION_WORDS[sample.truth]}</span></td><td className="wraps">{sample.basis}</td>
                      <td className="mono to-right">{sample.trials}</td><td>{showDay(sample.createdAt, laboratory.zone)}, {sample.createdBy}</td>
                      <td className="wraps">{sample.withdrawn === null ? <Button kind="quiet" onPress={() => { setSheet({ is: 'withdraw', sample }); }}>Withdraw</Button> : `withdrawn ${showDay(sample.withdrawn.at, laboratory.zone)}${sample.withdrawn.originWrong ? ', origin was wrong, trials not counted' : ''}: ${sample.withdrawn.reason}`}</td>
                    </tr>
                  ))}</tbody>
                </table>
              </div>
            </section>
          </>
        ) : null}
      </div>
      {sheet === 'sample' ? <SampleForm onClose={() => { setSheet(null); }} /> : null}
      {sheet === 'trial' && data ? <TrialForm samples={data.samples} people={data.people} instruments={data.instruments} today={today} onClose={() => { setSheet(null); }} /> : null}
      {sheet !== null && typeof sheet === 'object' && sheet.is === 'withdraw' ? <WithdrawForm sample={sheet.sample} onClose={() => { setSheet(null); }} /> : null}
      {sheet !== null && typeof sheet === 'object' && sheet.is === 'take-back' ? <TakeBackForm trial={sheet.trial} onClose={() => { setSheet(null); }} /> : null}
    </View>
  );
}
