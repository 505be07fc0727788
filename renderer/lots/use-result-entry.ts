import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { LotOutcome } from '../../app/lots/lot-outcome.ts';
import type { ResultEntry } from '../../app/lots/lot-record.ts';
import type { LotResultView } from '../../app/contract/lots.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

/** Keys pressed within this time are kept together. */
const GATHER_MS = 350;

export type ResultEntryState = {
  /** What stands for each number, with what was typed and is not kept yet. */
  readonly results: readonly LotResultView[];
  readonly waiting: number;
  enter(number: number, outcome: LotOutcome | null): void;
  /** Takes the last entry of this window back; returns its number. */
  undo(): number | null;
};

type Step = { readonly number: number; readonly from: LotOutcome | null; readonly to: LotOutcome | null };

/** Keeps outcomes as they are typed, a few at a time, in order; what another has changed meanwhile is said and not overwritten. */
export function useResultEntry(itemId: string, kept: readonly LotResultView[], me: string): ResultEntryState {
  const [over, setOver] = useState<ReadonlyMap<number, LotOutcome | null>>(new Map());
  const queue = useRef<ResultEntry[]>([]);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const busy = useRef(false);
  const steps = useRef<Step[]>([]);
  const notes = useNotes();
  const change = useChange('lots.enter');
  const { mutateAsync } = change;
  const standing = useMemo(() => new Map(kept.map((one) => [one.number, one])), [kept]);
  const latest = useRef({ standing, over });
  /** Kept, and not yet seen in the lists. */
  const sent = useRef(new Set<number>());

  const show = useCallback((next: Map<number, LotOutcome | null>) => { latest.current.over = next; setOver(next); }, []);
  const drop = useCallback((done: (number: number, outcome: LotOutcome | null) => boolean) => {
    const queued = new Set(queue.current.map((entry) => entry.number));
    const left = new Map([...latest.current.over].filter(([number, outcome]) => queued.has(number) || !sent.current.has(number) || !done(number, outcome)));
    for (const number of sent.current) if (!left.has(number) || queued.has(number)) sent.current.delete(number);
    if (left.size !== latest.current.over.size) show(left);
  }, [show]);
  useEffect(() => {
    latest.current.standing = standing;
    drop(() => true);
  }, [standing, drop]);

  const flush = useCallback(async () => {
    if (busy.current || queue.current.length === 0) return;
    busy.current = true;
    const entries = queue.current.splice(0, 1000);
    try {
      await mutateAsync({ itemId, source: 'keyed', entries, note: '' });
      // What was typed is shown until the lists hold it: they may have come already, or come with the next drawing.
      for (const { number } of entries) sent.current.add(number);
      drop((number, outcome) => (latest.current.standing.get(number)?.outcome ?? null) === outcome);
    } catch (e) {
      // What was typed after it leaned on it.
      queue.current = [];
      steps.current = [];
      sent.current.clear();
      show(new Map());
      notes.complain((e as { failure: { message: string; next: string } }).failure);
    } finally {
      busy.current = false;
      if (queue.current.length > 0) void flush();
    }
  }, [itemId, mutateAsync, notes, show, drop]);

  const flushNow = useRef(flush);
  useEffect(() => { flushNow.current = flush; }, [flush]);
  // Leaving the view keeps what is still waiting.
  useEffect(() => () => { if (timer.current) clearTimeout(timer.current); void flushNow.current(); }, []);

  const put = useCallback((number: number, outcome: LotOutcome | null): Step | null => {
    const { over: shown, standing: there } = latest.current;
    const was = shown.has(number) ? shown.get(number) ?? null : there.get(number)?.outcome ?? null;
    if (was === outcome) return null;
    queue.current.push({ number, outcome, was });
    show(new Map(shown).set(number, outcome));
    if (timer.current) clearTimeout(timer.current);
    timer.current = setTimeout(() => { void flushNow.current(); }, GATHER_MS);
    return { number, from: was, to: outcome };
  }, [show]);

  const results = useMemo(() => {
    if (over.size === 0) return kept;
    const all = new Map(standing);
    for (const [number, outcome] of over) {
      const there = standing.get(number);
      if (outcome === null) all.delete(number);
      else all.set(number, { number, outcome, at: there?.at ?? '', by: me, source: 'keyed', stoneId: null, before: there && there.outcome !== outcome ? there.outcome : there?.before ?? null });
    }
    return [...all.values()].sort((a, b) => a.number - b.number);
  }, [kept, standing, over, me]);

  return {
    results, waiting: over.size,
    enter(number, outcome) {
      const step = put(number, outcome);
      if (step) steps.current.push(step);
    },
    undo() {
      const step = steps.current.pop();
      if (!step) return null;
      put(step.number, step.from);
      return step.number;
    },
  };
}
