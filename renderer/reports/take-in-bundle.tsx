import { useState } from 'react';
import type { BundleVerdict } from '../../app/bundle/bundle-verdict.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { go } from '../router.ts';
import { UploadProgress } from './file-progress.tsx';

/** Whether a bundle may be kept at all: altered ones never are. */
export const canBeTaken = ({ verdict }: BundleVerdict): boolean => verdict === 'authentic' || verdict === 'unknown-key' || verdict === 'unsigned';

/** Keeps a checked bundle of another laboratory as it came; asks how it was made sure whose it is where its key is not known. */
export function TakeInBundle({ upload, verdict, onStop }: { /** Under which the program has the checked file. */ readonly upload: string; readonly verdict: BundleVerdict; readonly onStop: () => void }) {
  const [checkedHow, setCheckedHow] = useState('');
  const take = useChange('bundles.takeIn');
  const asks = verdict.verdict !== 'authentic';
  const send = () => { if (!take.isPending) take.mutate({ upload, checkedHow }, { onSuccess: ({ id }) => { go({ view: 'bundle', id }); } }); };
  useKey('Mod+Enter', send);
  // The field may lie below what is seen: without the cursor in it the refusal would pass for nothing at all.
  useFocusWrong('.bundle-take', null, take.error);
  const failure = take.error?.failure;
  const wrong = failure?.fields?.['checkedHow'];
  return (
    <section className="bundle-take" aria-label="Take in">
      <h2>Take it in</h2>
      <p className="second">It is kept as it came, to be looked into. Its cases never become cases of this laboratory and count in none of its figures. Its bytes make the casebook larger.</p>
      {asks ? <Field label={verdict.verdict === 'unsigned' ? 'How you made sure whose it is' : 'How you compared the fingerprint with the laboratory'} placeholder="for instance: fingerprint read out by telephone" value={checkedHow} error={wrong} onChange={setCheckedHow} /> : null}
      {failure && wrong === undefined ? <Trouble {...failure} /> : null}
      {take.isPending
        ? <UploadProgress what="Taking it in" upload={upload} onStop={onStop} />
        : <div><Button kind="main" keys="Mod+Enter" onPress={send}>Take it in</Button></div>}
    </section>
  );
}
