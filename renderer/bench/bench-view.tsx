import { SHOWN_LATER } from '../../app/conclusions/withhold.ts';
import type { CaseRow } from '../../app/contract/cases.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { useHouse } from '../house/house-context.tsx';
import { findAnything } from '../keys/palette.tsx';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { Glyph } from '../look/glyph.tsx';
import { showDue, showLongDate, showShortDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go, placeAddress } from '../router.ts';
import { View } from '../shell/view.tsx';
import './bench.css';

function CaseLine({ row, today, zone }: { readonly row: CaseRow; readonly today: string; readonly zone: string }) {
  const late = row.state === 'open' && row.dueOn !== null && row.dueOn < today;
  const when = row.state !== 'open' ? `since ${showShortDay(row.receivedAt, zone)}` : row.dueOn ? showDue(row.dueOn, today) : 'no date';
  return (
    <a className="bench-row" href={placeAddress({ view: 'case', id: row.id })}>
      <span className="mono">{row.number}</span>
      <span className="bench-who"><span className="two-lines" title={row.clientName}>{row.clientName}</span><span className="quiet two-lines" title={row.summary}>{row.summary}</span></span>
      <span className="two-lines">{row.next}</span>
      <span className={late ? 'warn' : ''}>{when}</span>
      <span className="mono two-lines" title={row.place}>{row.place}</span>
    </a>
  );
}

function CaseGroup({ title, rows, today, zone }: { readonly title: string; readonly rows: readonly CaseRow[]; readonly today: string; readonly zone: string }) {
  if (rows.length === 0) return null;
  return <section className="section"><h3>{title}</h3>{rows.map((r) => <CaseLine key={r.id} row={r} today={today} zone={zone} />)}</section>;
}

/** What to do today: late, due, to be confirmed, waiting for others; the house at the right. */
export default function BenchView() {
  const { laboratory } = useHouse();
  const bench = useAsk('bench.today', {}, { keep: true });
  const instruments = useAsk('instruments.list', {}, { keep: true });
  const zone = laboratory.zone;
  const actions = (
    <>
      <Button keys="Mod+K" onPress={findAnything}>Find anything</Button>
      <Button kind="main" keys="N" onPress={() => { go({ view: 'intake' }); }}>Take in a case</Button>
    </>
  );
  if (bench.isError) return <View title="Bench" actions={actions}><div className="page"><Trouble {...bench.error.failure} /></div></View>;
  if (bench.isPending) return <View title="Bench" actions={actions}><Working what="Looking what is to do" /></View>;
  const t = bench.data;
  const intake = t.drafts.find((d) => d.key.startsWith('intake'));
  const nothing = t.overdue.length + t.dueSoon.length + t.later.length + t.waiting.length + t.toConfirm.length === 0;
  return (
    <View over={showLongDate(t.today)} title="Bench" actions={actions}>
      <div className="bench">
        <div className="bench-work">
          {intake ? <p className="bench-draft">A half-filled intake from {showShortDay(intake.updatedAt, zone)} is kept. <a className="link" href="#/intake">Go on with it</a></p> : null}
          {nothing ? <Empty title="Nothing waits"><p>When a client hands something over, press N.</p></Empty> : null}
          {t.toConfirm.length > 0 ? (
            <section className="section">
              <h3>For you to confirm</h3>
              {t.toConfirm.map((c) => (
                <a key={c.stoneId} className="bench-row bench-row-confirm" href={placeAddress({ view: 'stone', id: c.stoneId })}>
                  <span className="mono">{c.caseNumber}</span><span>{c.label}</span>
                  <span className="row gap8">{c.conclusion === null ? SHOWN_LATER : <><Glyph of={c.conclusion} />{CONCLUSION_WORDS[c.conclusion]}</>}</span>
                  <span className="quiet one-line">concluded by {c.by}, {showShortDay(c.at, zone)}</span>
                </a>
              ))}
            </section>
          ) : null}
          <CaseGroup title="Overdue" rows={t.overdue} today={t.today} zone={zone} />
          <CaseGroup title={`Due within ${laboratory.settings.dueSoonDays} days`} rows={t.dueSoon} today={t.today} zone={zone} />
          <CaseGroup title="Later, or without a date" rows={t.later} today={t.today} zone={zone} />
          <CaseGroup title="Waiting for others" rows={t.waiting} today={t.today} zone={zone} />
        </div>
        <aside className="bench-house">
          <section className="section">
            <h3>In the house</h3>
            <dl className="rows">
              <div><dt>In custody</dt><dd className="mono">{t.house.itemsInCustody} items</dd></div>
              <div><dt className={t.house.itemsOverdue > 0 ? 'warn' : ''}><a className="link" href="#/custody">Out of the house</a></dt><dd className="mono">{t.house.itemsOverdue > 0 ? `${t.house.itemsOut}, ${t.house.itemsOverdue} overdue` : t.house.itemsOut}</dd></div>
              <div><dt className={t.house.weightsAgree < t.house.weightsCompared ? 'warn' : ''}>Weights in and out agree</dt><dd className="mono">{t.house.weightsCompared === 0 ? 'none yet' : `${t.house.weightsAgree} of ${t.house.weightsCompared}`}</dd></div>
            </dl>
          </section>
          <section className="section">
            <h3>Instruments</h3>
            {instruments.data?.length === 0 ? <p className="second">None yet. <a className="link" href="#/instruments">Add the bench’s instruments</a>, so that runs can say which one was used and whether it was in order.</p> : null}
            <ul className="rows">
              {instruments.data?.filter((i) => i.active).map((i) => (
                <li key={i.id} className="bench-instrument">
                  <div className="grow"><p className={`two-lines ${i.state === 'in-order' ? '' : 'warn'}`} title={i.name}>{i.name}</p><p className="quiet two-lines" title={i.lastCheck?.outcome}>{i.state === 'in-order' ? i.lastCheck?.outcome : INSTRUMENT_TROUBLE[i.state]}</p></div>
                  <span className={`mono bench-when ${i.state === 'in-order' ? '' : 'warn'}`}>{i.lastCheck ? showShortDay(i.lastCheck.at, zone) : 'never'}</span>
                </li>
              ))}
            </ul>
          </section>
          <section className="section">
            <h3>Ledgers</h3>
            <p className="second">{(t.counts.custodyEntries + t.counts.auditEntries).toLocaleString('en')} entries. <a className="link" href="#/ledgers">Verify them</a></p>
          </section>
        </aside>
      </div>
    </View>
  );
}

const INSTRUMENT_TROUBLE = {
  'in-order': '', lapsed: 'check lapsed; runs since are marked', failed: 'last check failed; runs since are marked', 'never-checked': 'never checked; its runs are marked', 'no-instrument': '',
} as const;
