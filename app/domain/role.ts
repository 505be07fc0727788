import { z } from 'zod';

export const ROLES = ['intake', 'examiner', 'second-examiner', 'appraiser', 'manager'] as const;
export const role = z.enum(ROLES);
export type Role = z.infer<typeof role>;

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  intake: 'intake',
  examiner: 'examiner',
  'second-examiner': 'second examiner',
  appraiser: 'appraiser',
  manager: 'manager',
};

/** Roles whose holders can open the laboratory's key: they issue reports. */
const SIGNING: readonly Role[] = ['appraiser', 'manager'];

export const maySign = (person: { readonly active: boolean; readonly roles: readonly Role[] }): boolean =>
  person.active && person.roles.some((one) => SIGNING.includes(one));
