import type { imagesContract } from '../../app/contract/images.ts';
import { ok } from '../../app/result.ts';
import { measureDecay } from './images-decay.ts';
import { comparePairOf } from './images-pair.ts';
import { readPolarisers } from './images-polarisers.ts';
import { proposeFromPhotographs } from './images-propose.ts';
import { runImageTask } from './image-work.ts';
import type { Services } from './service.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';

/** Photographs as pictures to be read and measured. The bytes never change; all reading is done in a worker. */
export function createImageServices(deps: WorkDeps): Pick<Services, keyof typeof imagesContract> {
  return {
    'images.facts': reading(deps, 'images.facts', async ({ photographId }, work) => {
      const content = await work.casebook.photographs.content(photographId);
      if (!content.ok) return content;
      return runImageTask(work, 'photograph-facts', { bytes: content.value.bytes }, content.value.name, (result) => result);
    }),
    'images.preview': reading(deps, 'images.preview', async ({ photographId, longSide }, work) => {
      const content = await work.casebook.photographs.content(photographId);
      if (!content.ok) return content;
      return runImageTask(work, 'photograph-preview', { bytes: content.value.bytes, longSide }, content.value.name, (result) => result);
    }),
    'images.suggestOutlines': reading(deps, 'images.suggestOutlines', async ({ photographId }, work) => {
      const content = await work.casebook.photographs.content(photographId);
      if (!content.ok) return content;
      return runImageTask(work, 'suggest-outlines', { bytes: content.value.bytes }, content.value.name, (result) => result);
    }),
    'images.comparePair': changing(deps, 'images.comparePair', comparePairOf),
    'images.decay': changing(deps, 'images.decay', measureDecay),
    'images.polarisers': changing(deps, 'images.polarisers', readPolarisers),
    'images.ofItem': reading(deps, 'images.ofItem', async ({ itemId }, { stores }) => ok(await stores.photoAnalyses.ofItem(itemId))),
    'images.propose': changing(deps, 'images.propose', proposeFromPhotographs),
  };
}
