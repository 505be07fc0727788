import { ok } from '../../app/result.ts';
import type { Checkpoints } from '../checkpoints/checkpoints.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

/** Longest list. */
const SHOWN = 100;

export function createCheckpointsServices(deps: IntakeDeps & { readonly checkpoints: Checkpoints }): Pick<Services, 'checkpoints.make' | 'checkpoints.list'> {
  return {
    'checkpoints.make': changing(deps, 'checkpoints.make', (_casebook, change) => deps.checkpoints.make('asked', change.personId)),
    'checkpoints.list': reading(deps, async (casebook) => ok(await casebook.checkpoints.list(SHOWN))),
  };
}
