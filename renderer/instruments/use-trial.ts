import { useEffect, useRef, useState } from 'react';
import type { Failure } from '../../app/contract/failure.ts';
import type { Input, Output } from '../../app/contract/index.ts';
import { door } from '../door.ts';

type Trial = 'instruments.tryCalibration' | 'instruments.tryLaser';
export type TrialState<K extends Trial> = { readonly trial: Output<K> | null; readonly failure: Failure | null; readonly working: boolean };

/** Tries a calibration whenever its file or settings change; only the newest answer counts. `input` null waits and must keep its identity while nothing changed. */
export function useTrial<K extends Trial>(operation: K, input: Input<K> | null): TrialState<K> {
  const nothing: TrialState<K> = { trial: null, failure: null, working: false };
  const [state, setState] = useState<TrialState<K>>(nothing);
  const newest = useRef(0);
  useEffect(() => {
    const mine = ++newest.current;
    if (input === null) {
      setState({ trial: null, failure: null, working: false });
      return;
    }
    setState({ trial: null, failure: null, working: true });
    void door.call(operation, input).then((reply) => {
      if (mine === newest.current) setState(reply.ok ? { trial: reply.value, failure: null, working: false } : { trial: null, failure: reply.error, working: false });
    });
  }, [operation, input]);
  return state;
}
