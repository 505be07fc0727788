import { useEffect, useRef, useState } from 'react';
import type { Failure } from '../../app/contract/failure.ts';
import type { FileTrial } from '../../app/contract/work.ts';
import { door } from '../door.ts';
import type { IncomingFile } from './incoming-file.ts';

export type FileTrials = { readonly trials: ReadonlyMap<string, FileTrial>; readonly working: boolean; readonly failure: Failure | null };
const NOTHING: FileTrials = { trials: new Map(), working: false, failure: null };

/** Reads the files on trial whenever they, their stated units or the instrument change; only the newest answer counts. */
export function useFileTrials(caseId: string, instrumentId: string | null, files: readonly IncomingFile[]): FileTrials {
  const [state, setState] = useState<FileTrials>(NOTHING);
  const newest = useRef(0);
  useEffect(() => {
    const mine = ++newest.current;
    if (files.length === 0) {
      setState(NOTHING);
      return;
    }
    setState((now) => ({ ...now, working: true }));
    void door.call('runs.tryFiles', { caseId, instrumentId, files: files.map(({ name, bytes, xUnit }) => ({ name, bytes, ...(xUnit ? { xUnit } : {}) })) }).then((reply) => {
      if (mine !== newest.current) return;
      setState(reply.ok
        ? { trials: new Map(reply.value.map((trial, i) => [files[i]!.key, trial])), working: false, failure: null }
        : { trials: new Map(), working: false, failure: reply.error });
    });
  }, [caseId, instrumentId, files]);
  return state;
}
