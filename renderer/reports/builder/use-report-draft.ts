import { useEffect, useRef, useState } from 'react';
import type { Failure } from '../../../app/contract/failure.ts';
import type { DraftContent } from '../../../app/report/draft/draft-content.ts';
import { door } from '../../door.ts';
import { queryClient } from '../../queries.ts';

/** Pages are drawn and the draft is kept once the typing pauses for this long. */
const PAUSE_MS = 500;

export type ReportDraft = {
  readonly content: DraftContent;
  readonly change: (part: Partial<DraftContent>) => void;
  /** The content after the last pause: what the pages are drawn from. */
  readonly settled: DraftContent;
  /** Why what stands here is not kept; null while it is. */
  readonly failing: Failure | null;
  /** Keeps what stands here at once. True when it is kept. */
  readonly keep: () => Promise<boolean>;
};

/** What is chosen and written for one report, kept after each pause and when the view is left. */
export function useReportDraft(draftId: string, first: DraftContent): ReportDraft {
  const [content, setContent] = useState(first);
  const [settled, setSettled] = useState(first);
  const [failing, setFailing] = useState<Failure | null>(null);
  const latest = useRef(first);
  const kept = useRef(first);
  // One answer at a time: an older content must never be written over a newer one.
  const queue = useRef<Promise<boolean>>(Promise.resolve(true));

  const keep = (): Promise<boolean> => {
    queue.current = queue.current.then(async () => {
      const now = latest.current;
      if (now === kept.current) return true;
      const reply = await door.call('reportDrafts.save', { draftId, content: now });
      setFailing(reply.ok ? null : reply.error);
      if (reply.ok) {
        kept.current = now;
        void queryClient.invalidateQueries({ queryKey: ['reportDrafts.list'], refetchType: 'none' });
      }
      return reply.ok;
    });
    return queue.current;
  };
  const keepNow = useRef(keep);
  useEffect(() => { keepNow.current = keep; });

  useEffect(() => {
    latest.current = content;
    const timer = setTimeout(() => { setSettled(content); void keepNow.current(); }, PAUSE_MS);
    return () => { clearTimeout(timer); };
  }, [content]);
  useEffect(() => {
    const leave = () => { void keepNow.current(); };
    window.addEventListener('pagehide', leave);
    return () => { window.removeEventListener('pagehide', leave); leave(); };
  }, []);

  return { content, settled, failing, keep, change: (part) => { setContent((now) => ({ ...now, ...part })); } };
}
