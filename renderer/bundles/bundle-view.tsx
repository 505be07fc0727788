import { useState } from 'react';
import type { Output } from '../../app/contract/index.ts';
import { inGroups } from '../../app/signature/fingerprint.ts';
import { Fact } from '../cases/fact.tsx';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { showDate, showMoment } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { go } from '../router.ts';
import { sizeWords } from '../runs/incoming-file.ts';
import { View } from '../shell/view.tsx';
import { BundleCase } from './bundle-case.tsx';
import { KeepKey } from './keep-key.tsx';
import { KEPT_WORDS } from './kept-words.ts';
import '../reports/reports.css';
import './bundles.css';

/** One bundle of another laboratory: its cases at the left, the one that is looked at beside it. Nothing here can be changed. */
export default function BundleView({ id, folder }: { readonly id: string; /** Case that is looked at first, as the index names its folder. */ readonly folder?: string }) {
  const opened = useAsk('bundles.open', { id });
  const back = () => { go({ view: 'bundles' }); };
  useKey('Escape', back);
  const summary = opened.data?.bundle.summary;
  return (
    <View over={summary ? `${summary.demonstration ? 'Invented. ' : ''}Of another laboratory, as it came` : ' '} title={summary?.laboratory ?? 'Bundle'} actions={<Button kind="quiet" keys="Escape" onPress={back}>Bundles</Button>}>
      <div className="page page-sheet">
        {opened.isError ? <Trouble {...opened.error.failure} /> : null}
        {opened.isPending ? <Working what="Opening the bundle" /> : null}
        {opened.data ? <Opened key={folder} {...opened.data} first={folder} /> : null}
      </div>
    </View>
  );
}

function Opened({ bundle, index, signedBy, contradictions, first }: Output<'bundles.open'> & { readonly first: string | undefined }) {
  const { laboratory, me } = useHouse();
  const [folder, setFolder] = useState(index.cases.find((one) => one.folder === first)?.folder ?? index.cases[0]?.folder ?? '');
  const [keeping, setKeeping] = useState(false);
  const mayKeep = signedBy !== null && (signedBy.whose === null || signedBy.distrust !== '') && !bundle.summary.demonstration && (me?.roles.includes('manager') ?? false);
  useKey('K', () => { setKeeping(true); }, mayKeep && !keeping);
  const { ledgers } = bundle.summary;
  return (
    <div className="bundle-open">
      <nav className="bundle-cases" aria-label="Cases of the bundle">
        <ul>
          {index.cases.map((one) => (
            <li key={one.folder}>
              <button type="button" aria-current={one.folder === folder ? 'true' : undefined} onClick={() => { setFolder(one.folder); }}>
                <span className="mono">{one.number}</span><span className="second one-line" title={one.client}>{one.client}</span><span className="quiet">{showDate(one.receivedOn)}, {one.state}</span>
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <div className="bundle-shown">
        {contradictions.length > 0 ? <Contradictions all={contradictions} /> : null}
        {folder === '' ? <Empty title="No case" /> : <BundleCase key={folder} id={bundle.id} folder={folder} zone={index.laboratory.zone} />}
        <section aria-label="The bundle">
          <h2>The bundle</h2>
          <dl className="verdict-facts">
            <Fact name="File" text={`${bundle.name}, ${sizeWords(bundle.size)}`} />
            <Fact name="Written" mono text={showMoment(index.exportedAt, index.laboratory.zone)} />
            {index.period ? <Fact name="Received" mono text={`${index.period.from} to ${index.period.to}`} /> : null}
            <Fact name="Taken in" text={`${showMoment(bundle.takenAt, laboratory.zone)} by ${bundle.takenBy}: ${KEPT_WORDS[bundle.verdict]}`} />
            {bundle.checkedHow ? <Fact name="Made sure by" text={bundle.checkedHow} /> : null}
            <Fact name="Ledgers" text={`recomputed then: custody entries ${ledgers.custody}, audit entries ${ledgers.audit}, digests walked ${ledgers.walked}, checkpoints ${ledgers.checkpoints}`} />
            {signedBy ? <Fact name="Key now" text={signedBy.whose === null ? 'of nobody who is known here' : `of ${signedBy.whose}${signedBy.distrust ? `. ${signedBy.distrust}` : ''}`} /> : null}
            {bundle.fingerprint ? <Fact name="Fingerprint" mono text={inGroups(bundle.fingerprint)} /> : null}
            <Fact name="SHA-256" mono text={bundle.id} />
          </dl>
          {mayKeep ? <p className="bundle-keep"><span className="second">Compare the fingerprint with the laboratory by another way; then its key can be kept.</span><Button keys="K" onPress={() => { setKeeping(true); }}>Keep the key as known</Button></p> : null}
          {keeping ? <KeepKey id={bundle.id} laboratory={bundle.summary.laboratory} fingerprint={inGroups(bundle.fingerprint)} onClose={() => { setKeeping(false); }} /> : null}
        </section>
      </div>
    </div>
  );
}

/** What this bundle and others of the same laboratory say differently, by the other bundle, with the way to it. */
function Contradictions({ all }: { readonly all: Output<'bundles.open'>['contradictions'] }) {
  const others = [...new Set(all.map(({ other }) => other))];
  return (
    <section className="bundle-against" role="alert" aria-label="Contradictions">
      <h2>{others.length === 1 ? 'Contradicts another bundle' : 'Contradicts other bundles'}</h2>
      {others.map((other, i) => (
        <div key={other} className="bundle-against-one">
          <ul>{all.filter((one) => one.other === other).map(({ sentence }) => <li key={sentence}>{sentence}</li>)}</ul>
          <Button aria-label={others.length === 1 ? 'Open the other bundle' : `Open the other bundle, ${i + 1} of ${others.length}`} onPress={() => { go({ view: 'bundle', id: other }); }}>Open the other</Button>
        </div>
      ))}
      <p className="second">All are kept as they came. Ask the laboratory before you rely on any of them.</p>
    </section>
  );
}
