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
