import { useEffect, useState } from 'react';
import { METHODS, type MethodId } from '../../app/domain/method.ts';
import { door } from '../door.ts';
import { useKeptDraft, type KeptDraft } from '../drafts/use-kept-draft.ts';
import type { ObservationDraft } from './observation-draft.ts';
import type { RunSettings } from './run-settings.ts';

/** What is typed on the sheet, without the files: those must be dropped again. */
export type RunDraft = { readonly method: MethodId; readonly instrumentId: string | null; readonly settings: RunSettings; readonly observation: ObservationDraft; readonly note: string };

/** Shape check of a kept draft: an older program may have written another form. */
function isDraft(content: unknown): content is RunDraft {
  const draft = content as Partial<RunDraft> | null;
  return typeof draft === 'object' && draft !== null && typeof draft.method === 'string' && draft.method in METHODS
    && typeof draft.settings === 'object' && typeof draft.observation === 'object' && typeof draft.observation.choices === 'object' && typeof draft.note === 'string';
}

const written = (draft: RunDraft): RunDraft => draft;

/** Keeps what is typed for a stone while the sheet is open, so that it is there again if the window goes. */
export function useRunDraft(stoneId: string, now: RunDraft | null): Pick<KeptDraft<RunDraft>, 'failing' | 'forget'> & { readonly before: RunDraft | null } {
  const key = `run:${stoneId}`;
  const [before, setBefore] = useState<RunDraft | null>(null);
  useEffect(() => {
    let shown = true;
    void door.call('drafts.get', { key }).then((reply) => { if (shown && reply.ok && isDraft(reply.value.content)) setBefore(reply.value.content); });
    return () => { shown = false; };
  }, [key]);
  const { failing, forget } = useKeptDraft(key, now, written);
  return { before, failing, forget };
}
