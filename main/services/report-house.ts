import { TEXT_KINDS } from '../../app/report/texts/text-kinds.ts';
import { ok } from '../../app/result.ts';
import { conflict, notFound } from './failures.ts';
import type { Services } from './service.ts';
import { lookAtTemplate, refuseTemplate, templateDesk } from './report-templates.ts';
import { changing, reading, type WorkDeps } from './work-context.ts';
import type { reportHouseContract } from '../../app/contract/report-house.ts';

/** The laboratory's own texts, templates and authorisations. */
export function createReportHouseServices(deps: WorkDeps): Pick<Services, keyof typeof reportHouseContract> {
  return {
    'houseTexts.list': reading(deps, 'houseTexts.list', async (_input, { stores }) => {
      const current = await stores.reportHouse.texts();
      return ok({ current: TEXT_KINDS.map((kind) => current[kind]), versions: await stores.reportHouse.textVersions() });
    }),
    'houseTexts.write': changing(deps, 'houseTexts.write', async (input, { stores, change }) => {
      if ((await stores.reportHouse.texts())[input.kind].text.trim() === input.text.trim()) return conflict('The text reads as before.', 'Change it, then keep it.');
      return ok(await stores.reportHouse.writeText(change, { ...input, text: input.text.trim() }));
    }),
    'reportTemplates.list': reading(deps, 'reportTemplates.list', async (_input, { stores }) => ok((await stores.reportHouse.templates()).filter((one) => !one.content.withdrawn))),
    'reportTemplates.desk': reading(deps, 'reportTemplates.desk', async (_input, work) => ok(await templateDesk(work))),
    'reportTemplates.look': reading(deps, 'reportTemplates.look', async ({ content }, work) => lookAtTemplate(content, work)),
    'reportTemplates.save': changing(deps, 'reportTemplates.save', async ({ templateId, content }, { stores, change }) => {
      const refusal = refuseTemplate(templateId, content, await stores.reportHouse.templates());
      if (refusal !== null) return refusal;
      const saved = await stores.reportHouse.saveTemplate(change, templateId, content);
      return saved === null ? notFound('This template') : ok(saved);
    }),
    'authorisations.list': reading(deps, 'authorisations.list', async (_input, { stores }) => ok(await stores.reportHouse.authorisations())),
    'authorisations.write': changing(deps, 'authorisations.write', async (input, { stores, casebook, change }) => {
      if (await casebook.people.get(input.holderId) === null) return notFound('This person');
      return ok(await stores.reportHouse.authorise(change, input));
    }),
  };
}
