import { ok } from '../../app/result.ts';
import { reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

export function createDraftsServices(deps: IntakeDeps): Pick<Services, 'drafts.get' | 'drafts.put' | 'drafts.remove'> {
  return {
    'drafts.get': reading(deps, async (casebook, { key }) => {
      const draft = await casebook.drafts.get(key);
      return ok({ content: draft?.content ?? null, updatedAt: draft?.updatedAt ?? null });
    }),
    'drafts.put': reading(deps, async (casebook, { key, content }) => {
      const updatedAt = deps.now().toISOString();
      await casebook.drafts.put(key, content, updatedAt);
      return ok({ updatedAt });
    }),
    'drafts.remove': reading(deps, async (casebook, { key }) => {
      await casebook.drafts.remove(key);
      return ok({ done: true });
    }),
  };
}
