import type { CustodyPagesModel } from '../../../app/report/custody-pages-model.ts';
import { renderCustody } from '../../print/render-custody.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** Draws the chain-of-custody pages. */
export const renderCustodyTask: Task<CustodyPagesModel, Uint8Array<ArrayBuffer>> = {
  run: (model) => renderCustody(model),
  transfers: (pdf) => buffersOf([pdf]),
};
