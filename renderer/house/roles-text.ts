import { ROLES, ROLE_WORDS, type Role } from '../../app/domain/role.ts';

/** "examiner, appraiser", or one word for whoever may do everything. */
export const rolesText = (roles: readonly Role[]): string => (roles.length === ROLES.length ? 'every role' : roles.map((r) => ROLE_WORDS[r]).join(', '));
