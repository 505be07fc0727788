import type { HandOverModel } from '../../../app/report/hand-over-model.ts';
import { renderHandOver } from '../../print/render-hand-over.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** Draws the form that giver and taker sign. */
export const renderHandOverTask: Task<HandOverModel, Uint8Array<ArrayBuffer>> = {
  run: (model) => renderHandOver(model),
  transfers: (pdf) => buffersOf([pdf]),
};
