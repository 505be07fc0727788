import { useCallback, useEffect, useRef, useState } from 'react';
import type { Failure } from '../../app/contract/failure.ts';
import { door } from '../door.ts';
import { queryClient } from '../queries.ts';

const PAUSE_MS = 400;
/** While the program does not answer, the draft is offered to it again this often. */
const RETRY_MS = 2000;

export type KeptDraft<T> = {
  /** Why what stands on the sheet is not kept; null while it is. */
  readonly failing: Failure | null;
  /** Tells what is kept already, so that it is not written again. */
  readonly standsAt: (content: T) => void;
  /** Removes the draft; what stands on the sheet now is not written again, what is typed afterwards is. */
  readonly forget: () => Promise<void>;
};

/**
 * Keeps `now` under `key` after each pause in the typing and when the window goes; null keeps nothing new.
 * Only an answer counts as kept: without one it is offered again until there is one. `write` gives what is stored of it and must not change.
 */
export function useKeptDraft<T extends object>(key: string, now: T | null, write: (content: T) => unknown): KeptDraft<T> {
  const [failing, setFailing] = useState<Failure | null>(null);
  const latest = useRef(now);
  const kept = useRef<T | null>(null);
  const underway = useRef<T | null>(null);
  useEffect(() => { latest.current = now; }, [now]);

  const save = useCallback(() => {
    const content = latest.current;
    if (content === null || content === kept.current || content === underway.current) return;
    underway.current = content;
    void door.call('drafts.put', { key, content: write(content) }).then((reply) => {
      const newest = underway.current === content;
      if (newest) underway.current = null;
      setFailing(reply.ok ? null : reply.error);
      if (!reply.ok) return;
      if (newest) kept.current = content;
      // The bench speaks of kept drafts.
      void queryClient.invalidateQueries({ queryKey: ['bench.today'], refetchType: 'none' });
    });
  }, [key, write]);

  useEffect(() => {
    const timer = setTimeout(save, PAUSE_MS);
    return () => { clearTimeout(timer); };
  }, [now, save]);

  useEffect(() => {
    if (failing === null) return undefined;
    const timer = setInterval(save, RETRY_MS);
    return () => { clearInterval(timer); };
  }, [failing, save]);

  useEffect(() => {
    window.addEventListener('pagehide', save);
    window.addEventListener('blur', save);
    return () => { window.removeEventListener('pagehide', save); window.removeEventListener('blur', save); save(); };
  }, [save]);

  const standsAt = useCallback((content: T) => { kept.current = content; }, []);
  const forget = useCallback(async () => {
    kept.current = latest.current;
    underway.current = null;
    await door.call('drafts.remove', { key });
    await queryClient.invalidateQueries({ queryKey: ['bench.today'] });
  }, [key]);
  return { failing, standsAt, forget };
}
