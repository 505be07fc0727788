import { useState } from 'react';
import type { PhotoAnalysisView } from '../../app/contract/images.ts';
import type { Hazard } from '../../app/domain/method.ts';
import { hazardsOf } from '../../app/runs/hazards-of.ts';
import { countWords } from '../../app/report/count-words.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { CautionNotice } from '../runs/caution-notice.tsx';

type Which = 'all' | 'out';

/** The method that a run from each kind of analysis has; its cautions are asked for. */
const METHOD_OF = { pair: 'fluorescence-short-wave', decay: 'phosphorescence', polarisers: 'crossed-polarisers' } as const;

/** Gives stones a run with both photographs and the findings proposed from them; the examiner accepts or sets aside in each stone's folder. */
export function Propose({ analysis, stones, pictures, onAnew }: {
  readonly analysis: PhotoAnalysisView; readonly stones: readonly { readonly stoneId: string | null; readonly standsOut?: boolean }[];
  /** What each run keeps as its records, for instance “both photographs”. */
  readonly pictures: string;
  readonly onAnew: () => void;
}) {
  const [open, setOpen] = useState(false);
  const [which, setWhich] = useState<Which>('all');
  const [acknowledged, setAcknowledged] = useState<readonly Hazard[]>([]);
  const propose = useChange('images.propose');
  const notes = useNotes();
  const given = new Set(analysis.runs.map((run) => run.stoneId));
  const tied = stones.flatMap(({ stoneId, standsOut = false }) => (stoneId === null || given.has(stoneId) ? [] : [{ stoneId, standsOut }]));
  const out = tied.filter((stone) => stone.standsOut);
  const chosen = which === 'all' ? tied : out;
  const hazards = hazardsOf(METHOD_OF[analysis.content.kind], null);
  const unconfirmed = propose.error ? propose.error.failure : null;
  const submit = () => {
    propose.mutate({ analysisId: analysis.id, stoneIds: chosen.map((stone) => stone.stoneId), cautions: [...acknowledged] }, {
      onSuccess: () => { setOpen(false); notes.say(`${countWords(chosen.length, 'stone')}: findings proposed. Accept them in the folder of each.`); },
    });
  };
  const said = tied.length > 0 ? '' : given.size > 0 ? `Proposed for ${countWords(given.size, 'stone')}; accept or set aside in the folder of each.` : 'No mark is tied to a stone: tie them on the map and measure anew, then findings can be proposed.';
  return (
    <div className="map-acts pair-acts">
      {tied.length > 0 ? <Button kind="main" onPress={() => { setOpen(true); }}>Propose findings …</Button> : <p className="quiet">{said}</p>}
      {tied.length > 0 && given.size > 0 ? <span className="quiet">{countWords(given.size, 'stone')} done</span> : null}
      <Button onPress={onAnew}>Measure anew</Button>
      {open ? (
        <Dialog title="Propose findings from these photographs" width={520} onClose={() => { setOpen(false); }}
          footer={<><Button onPress={() => { setOpen(false); }}>Leave it</Button><Button kind="main" isDisabled={propose.isPending || chosen.length === 0} onPress={submit}>Propose for {countWords(chosen.length, 'stone')}</Button></>}>
          <div className="pair-propose">
            <p>Each stone gets a run with {pictures} as its records, and what was measured as proposed findings. They carry no weight alone.</p>
            {out.length > 0 ? <Choice label="For which stones" value={which} onChange={setWhich} options={[{ value: 'all', label: `all that were measured (${tied.length})` }, { value: 'out', label: `only those that stand out (${out.length})`, disabled: out.length === 0 }]} /> : null}
            <CautionNotice hazards={hazards} acknowledged={acknowledged} onAcknowledged={setAcknowledged} error={undefined} />
            {unconfirmed ? <Trouble {...unconfirmed} /> : null}
          </div>
        </Dialog>
      ) : null}
    </div>
  );
}
