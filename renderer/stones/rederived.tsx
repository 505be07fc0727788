import { useMemo } from 'react';
import type { ConclusionView } from '../../app/contract/work.ts';
import { CONCLUSION_WORDS } from '../../app/domain/conclusion.ts';
import { rederive } from '../../app/evidence/rederive.ts';

/** Whether the proposal a conclusion rests on comes out the same when it is made again from what was stored with it. */
export function Rederived({ conclusion: { proposal } }: { readonly conclusion: Pick<ConclusionView, 'proposal'> }) {
  const again = useMemo(() => rederive(proposal), [proposal]);
  switch (again.state) {
    case 'no-basis': return null;
    case 'same': return <p className="note-from">Proposal made again from its stored findings: the same to the letter.</p>;
    case 'differs': return <p className="note-from warn">Made again from its stored findings, the proposal is another one ({CONCLUSION_WORDS[again.now.conclusion]}): what is stored was altered. Verify the ledgers.</p>;
    case 'other-versions': return <p className="note-from">Made with {again.made}. The present ones ({again.present}) would propose for the same findings: {CONCLUSION_WORDS[again.now.conclusion]}.</p>;
  }
}
