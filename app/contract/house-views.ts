import { z } from 'zod';
import { houseSettings } from '../domain/house-settings.ts';
import { role } from '../domain/role.ts';
import { filled, id, instant } from './common.ts';

export const personView = z.object({ id, name: z.string(), initials: z.string(), roles: z.array(role), active: z.boolean() });
export type PersonView = z.infer<typeof personView>;

export const laboratoryView = z.object({
  name: z.string(), address: z.string(), zone: z.string(), isDemonstration: z.boolean(),
  logo: z.object({ mediaType: z.string(), bytes: z.instanceof(Uint8Array) }).nullable(),
  settings: houseSettings, createdAt: instant,
});
export type LaboratoryView = z.infer<typeof laboratoryView>;

export const personInput = z.strictObject({
  name: filled('Write the person’s name.', 120),
  initials: filled('Write two to six letters.', 8),
  roles: z.array(role).min(1, 'Choose at least one role.'),
});
