import type { ReceiptModel } from '../../../app/report/receipt-model.ts';
import { renderReceipt } from '../../print/render-receipt.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** Draws a client's receipt. */
export const renderReceiptTask: Task<ReceiptModel, Uint8Array<ArrayBuffer>> = {
  run: (model) => renderReceipt(model),
  transfers: (pdf) => buffersOf([pdf]),
};
