import { useCallback, useEffect, useRef, useState } from 'react';
import { METHODS, type MethodId } from '../../app/domain/method.ts';
import { door } from '../door.ts';
import type { ObservationDraft } from './observation-draft.ts';
import type { RunSettings } from './run-settings.ts';

/** What is typed on the sheet, without the files: those must be dropped again. */
export type RunDraft = { readonly method: MethodId; readonly instrumentId: string | null; readonly settings: RunSettings; readonly observation: ObservationDraft; readonly note: string };

const PAUSE_MS = 400;

/** Shape check of a kept draft: an older program may have written another form. */
function isDraft(content: unknown): content is RunDraft {
  const draft = content as Partial<RunDraft> | null;
  return typeof draft === 'object' && draft !== null && typeof draft.method === 'string' && draft.method in METHODS
    && typeof draft.settings === 'object' && typeof draft.observation === 'object' && typeof draft.observation.choices === 'object' && typeof draft.note === 'string';
}

/** Keeps what is typed for a stone while the sheet is open, so that it is there again if the window goes. */
export function useRunDraft(stoneId: string, now: RunDraft | null): { readonly before: RunDraft | null; readonly read: boolean; readonly forget: () => void } {
  const key = `run:${stoneId}`;
  const [state, setState] = useState<{ before: RunDraft | null; read: boolean }>({ before: null, read: false });
  const forgotten = useRef(false);
  useEffect(() => {
    let shown = true;
    void door.call('drafts.get', { key }).then((reply) => {
      if (shown) setState({ before: reply.ok && isDraft(reply.value.content) ? reply.value.content : null, read: true });
    });
    return () => { shown = false; };
  }, [key]);
  useEffect(() => {
    if (now === null || forgotten.current) return undefined;
    const timer = setTimeout(() => { if (!forgotten.current) void door.call('drafts.put', { key, content: now }); }, PAUSE_MS);
    return () => { clearTimeout(timer); };
  }, [key, now]);
  const forget = useCallback(() => {
    forgotten.current = true;
    void door.call('drafts.remove', { key });
  }, [key]);
  return { ...state, forget };
}
