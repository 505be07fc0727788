import type { OperationName } from '../../app/contract/index.ts';
import type { Role } from '../../app/domain/role.ts';
import { useHouse } from '../house/house-context.tsx';

/** Who may do what the window offers only to them. The door refuses everybody else in any case; a test compares these roles with the contract. */
export const OFFERED = {
  'reportDrafts.create': ['examiner', 'second-examiner', 'appraiser', 'manager'],
  'reports.withdraw': ['appraiser', 'manager'],
} as const satisfies Partial<Record<OperationName, readonly Role[]>>;

/** Whether who works at this window may do it, so that it is offered. */
export function useMay(operation: keyof typeof OFFERED): boolean {
  const roles: readonly Role[] = useHouse().me?.roles ?? [];
  return OFFERED[operation].some((role) => roles.includes(role));
}
