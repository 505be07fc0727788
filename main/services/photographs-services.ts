import { ok } from '../../app/result.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createPhotographsServices(deps: IntakeDeps): Pick<Services, 'photographs.add' | 'photographs.content'> {
  return {
    'photographs.add': changing(deps, 'photographs.add', (casebook, change, input) => casebook.photographs.add(change, input)),
    'photographs.content': reading(deps, async (casebook, { photographId }) => {
      const content = await casebook.photographs.content(photographId);
      return content.ok ? ok({ mediaType: content.value.mediaType, name: content.value.name, bytes: content.value.bytes }) : content;
    }),
  };
}
