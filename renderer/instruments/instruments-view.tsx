import { useState } from 'react';
import type { InstrumentView } from '../../app/contract/work.ts';
import { UNIT_WORDS } from '../../app/calibration/standard.ts';
import { METHODS } from '../../app/domain/method.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { showMoment, showShortDay } from '../look/time.ts';
import { useAsk } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { go } from '../router.ts';
import { CalibrateSheet } from './calibrate-sheet.tsx';
import { CheckForm } from './check-form.tsx';
import { LaserSheet } from './laser-sheet.tsx';
import { InstrumentForm } from './instrument-form.tsx';
import './instruments.css';

const STATE_WORDS: Readonly<Record<InstrumentView['state'], string>> = {
  'in-order': 'in order', lapsed: 'check lapsed', failed: 'last check failed', 'never-checked': 'never checked', 'no-instrument': '',
};

function remembered(i: InstrumentView): string {
  const r = i.remembers;
  return [
    r.laserNm !== undefined ? `laser ${r.laserNm} nm` : '', r.temperatureK !== undefined ? `${r.temperatureK} K` : '',
    r.integrationMs !== undefined ? `${r.integrationMs} ms` : '', r.resolution !== undefined ? `resolution ${r.resolution}` : '',
    r.xUnit ? `files in ${r.xUnit}` : '',
  ].filter(Boolean).join(' · ');
}

/** "scale by neon lamp: positions within 0.02 nm, corrected" */
function scaleWords({ standard, error, unit, use }: NonNullable<InstrumentView['scale']>): string {
  return `scale by ${standard}: positions ${use === 'correct' ? 'within' : 'off by'} ${error.toFixed(unit === 'nm' ? 3 : 2)} ${UNIT_WORDS[unit]}${use === 'correct' ? ', corrected' : ', left as they are'}`;
}

/** The bench's instruments: what they are for, whether they are in order, what they remember. */
export default function InstrumentsView() {
  const { laboratory } = useHouse();
  const list = useAsk('instruments.list', {});
  const [editing, setEditing] = useState<InstrumentView | 'new' | null>(null);
  const [checking, setChecking] = useState<InstrumentView | null>(null);
  const [calibrating, setCalibrating] = useState<InstrumentView | null>(null);
  const [measuring, setMeasuring] = useState<InstrumentView | null>(null);
  useKey('A', () => { setEditing('new'); }, editing === null && checking === null && calibrating === null && measuring === null);
  return (
    <View over="A run of an instrument that is not in order is kept and marked; its findings do not count" title="Instruments"
      actions={<><Button onPress={() => { go({ view: 'batch' }); }}>Analyse a folder</Button><Button kind="main" keys="A" onPress={() => { setEditing('new'); }}>Add an instrument</Button></>}>
      <div className="page page-sheet">
        {list.isError ? <Trouble {...list.error.failure} /> : null}
        {list.isPending ? <Working what="Reading the instruments" /> : null}
        {list.data?.length === 0 ? <Empty title="No instrument yet"><p>Add each instrument of the bench, then record its check: a lamp line, polystyrene, a reference stone, a weight. Runs then say which instrument was used and whether it was in order.</p></Empty> : null}
        <ul className="rows">
          {list.data?.map((i) => (
            <li key={i.id} className={`instrument ${i.active ? '' : 'quiet'}`}>
              <div>
                <h3 className="two-lines" title={i.name}>{i.name}</h3>
                <p className="quiet two-lines" title={i.serial}>{[i.serial ? `serial ${i.serial}` : '', i.place, i.active ? '' : 'out of use'].filter(Boolean).join(' · ')}</p>
              </div>
              <div>
                <p className="two-lines">{i.methods.map((m) => METHODS[m].name).join(', ')}</p>
                <p className="quiet mono">{remembered(i)}</p>
                {i.scale ? <p className="quiet">{scaleWords(i.scale)}, {showShortDay(i.scale.at, laboratory.zone)}</p> : null}
              </div>
              <div>
                <p className={i.state === 'in-order' ? '' : 'warn'}>{STATE_WORDS[i.state]}, every {i.checkEveryDays} days</p>
                {i.lastCheck ? <p className="quiet two-lines">{showMoment(i.lastCheck.at, laboratory.zone)}, {i.lastCheck.by}: {i.lastCheck.reference}, {i.lastCheck.outcome}</p> : null}
              </div>
              <div className="row gap4 instrument-keys">{i.methods.some((m) => METHODS[m].yields === 'spectrum') ? <Button onPress={() => { setCalibrating(i); }}>Calibrate</Button> : null}{i.methods.some((m) => m === 'raman' || m === 'photoluminescence') ? <Button onPress={() => { setMeasuring(i); }}>Measure the laser</Button> : null}<Button onPress={() => { setChecking(i); }}>Record a check</Button><Button kind="quiet" onPress={() => { setEditing(i); }}>Edit</Button></div>
            </li>
          ))}
        </ul>
      </div>
      {editing ? <InstrumentForm instrument={editing === 'new' ? null : editing} onClose={() => { setEditing(null); }} /> : null}
      {calibrating ? <CalibrateSheet instrument={calibrating} onClose={() => { setCalibrating(null); }} /> : null}
      {measuring ? <LaserSheet instrument={measuring} onClose={() => { setMeasuring(null); }} /> : null}
      {checking ? <CheckForm instrument={checking} onClose={() => { setChecking(null); }} /> : null}
    </View>
  );
}
