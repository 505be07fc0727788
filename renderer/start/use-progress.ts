import { useEffect, useState } from 'react';
import { door } from '../door.ts';

export type Progress = { readonly done: number; readonly total: number; readonly note: string };

/** How far the named long task has come; null before it tells. */
export function useProgress(task: string): Progress | null {
  const [progress, setProgress] = useState<Progress | null>(null);
  useEffect(() => door.subscribe((event) => {
    if (event.kind === 'progress' && event.task === task) setProgress({ done: event.done, total: event.total, note: event.note });
  }), [task]);
  return progress;
}
