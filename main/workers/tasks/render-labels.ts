import type { LabelsModel } from '../../../app/report/labels-model.ts';
import { renderLabels } from '../../print/render-labels.ts';
import type { Task } from '../task.ts';
import { buffersOf } from '../task.ts';

/** Draws the labels of a case. */
export const renderLabelsTask: Task<LabelsModel, Uint8Array<ArrayBuffer>> = {
  run: (model) => renderLabels(model),
  transfers: (pdf) => buffersOf([pdf]),
};
