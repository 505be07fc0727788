import { useState } from 'react';
import type { StoneFolder, WithheldConclusion } from '../../app/contract/work.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { useHouse } from '../house/house-context.tsx';
import { WhoWorks } from '../house/who-works.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useChange } from '../queries.ts';

const OUTCOMES = CONCLUSION_IDS.map((value) => ({ value, label: CONCLUSION_WORDS[value] }));

/** The second person states a conclusion before the first one is shown to them. What is stated is written down and stands. */
export function ReadFirstSheet({ folder, withheld, onClose }: { readonly folder: StoneFolder; readonly withheld: WithheldConclusion; readonly onClose: () => void }) {
  const { me } = useHouse();
  const [own, setOwn] = useState<ConclusionId | null>(null);
  const [choosing, setChoosing] = useState(false);
  const [without, setWithout] = useState(false);
  const read = useChange('conclusions.read');
  const state = (outcome: ConclusionId | null) => { if (!read.isPending) read.mutate({ conclusionId: withheld.conclusionId, outcome }); };
  const submit = () => { if (own !== null) state(own); };
  useKey('Mod+Enter', submit, !choosing);
  const accepted = folder.findings.filter((finding) => finding.state === 'accepted');
  return (
    <>
      <Dialog asks title={`Your conclusion of ${folder.stone.label}`} width={640} onClose={onClose} footer={(
        <>
          <span className="quiet grow">{me ? `You answer as ${me.name}.` : 'Nobody is chosen at this window.'}</span>
          <Button onPress={() => { setChoosing(true); }}>Someone else</Button>
          <Button kind="main" keys="Mod+Enter" isDisabled={own === null} isPending={read.isPending} onPress={submit}>State it and see the first</Button>
        </>
      )}>
        <p>Look at the findings and the curves ({accepted.length === 1 ? 'one finding' : `${accepted.length} findings`} accepted, {folder.runs.length === 1 ? 'one run' : `${folder.runs.length} runs`}), and say what you conclude. What {withheld.by} concluded is shown afterwards, and you answer to it then. What you state is written down with the time and can’t be changed.</p>
        <Choice<ConclusionId> label="Your own conclusion" value={own ?? ''} placeholder="choose" options={OUTCOMES} onChange={setOwn} />
        {without
          ? <div className="row gap8"><p className="second grow">It is written down that you saw it without stating one. Your answer then counts as confirmation, not as a second reading.</p><Button onPress={() => { setWithout(false); }}>Back</Button><Button isPending={read.isPending} onPress={() => { state(null); }}>Show it</Button></div>
          : <div><Button kind="quiet" onPress={() => { setWithout(true); }}>I know the first conclusion already, or will not state one</Button></div>}
        {read.error ? <Trouble {...read.error.failure} /> : null}
      </Dialog>
      {choosing ? <WhoWorks onClose={() => { setChoosing(false); read.reset(); }} /> : null}
    </>
  );
}
