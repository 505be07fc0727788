import { useEffect, useRef, useState } from 'react';
import type { CalibrationTrial } from '../../app/contract/calibration.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { Input } from '../../app/contract/index.ts';
import { door } from '../door.ts';

export type TrialState = { readonly trial: CalibrationTrial | null; readonly failure: Failure | null; readonly working: boolean };
const NOTHING: TrialState = { trial: null, failure: null, working: false };

/** Tries a calibration whenever its file or standard changes; only the newest answer counts. `input` null waits and must keep its identity while nothing changed. */
export function useCalibrationTrial(input: Input<'instruments.tryCalibration'> | null): TrialState {
  const [state, setState] = useState<TrialState>(NOTHING);
  const newest = useRef(0);
  useEffect(() => {
    const mine = ++newest.current;
    if (input === null) {
      setState(NOTHING);
      return;
    }
    setState({ ...NOTHING, working: true });
    void door.call('instruments.tryCalibration', input).then((reply) => {
      if (mine === newest.current) setState(reply.ok ? { trial: reply.value, failure: null, working: false } : { trial: null, failure: reply.error, working: false });
    });
  }, [input]);
  return state;
}
