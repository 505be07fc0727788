import { createAuditServices } from './audit-services.ts';
import { createBenchServices } from './bench-services.ts';
import { createCasebookServices } from './casebook-services.ts';
import { createCasesServices } from './cases-services.ts';
import { createClientsServices } from './clients-services.ts';
import { createCustodyServices } from './custody-services.ts';
import { createDraftsServices } from './drafts-services.ts';
import { createFindServices } from './find-services.ts';
import type { IntakeDeps } from './intake-context.ts';
import { createLaboratoryServices } from './laboratory-services.ts';
import { createPeopleServices } from './people-services.ts';
import { createPhotographsServices } from './photographs-services.ts';
import { createVerifyServices } from './verify-services.ts';

/** Everything about the casebook itself and what is taken in. */
export function createIntakeServices(deps: IntakeDeps) {
  return {
    ...createCasebookServices(deps),
    ...createLaboratoryServices(deps),
    ...createPeopleServices(deps),
    ...createClientsServices(deps),
    ...createCasesServices(deps),
    ...createCustodyServices(deps),
    ...createPhotographsServices(deps),
    ...createDraftsServices(deps),
    ...createBenchServices(deps),
    ...createFindServices(deps),
    ...createAuditServices(deps),
    ...createVerifyServices(deps),
  };
}
