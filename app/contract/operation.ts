import type { z } from 'zod';
import type { Role } from '../domain/role.ts';

/** Who may call an operation: 'door' = before a casebook is open; 'anyone' = whoever works at the window; else one of these roles. */
export type Permission = 'door' | 'anyone' | readonly Role[];

export type Operation<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> = {
  readonly input: I;
  readonly output: O;
  readonly may: Permission;
  /** Set where the operation changes records: such a call is written to the audit ledger by the service. */
  readonly changes: boolean;
};

export function reads<I extends z.ZodType, O extends z.ZodType>(may: Permission, input: I, output: O): Operation<I, O> {
  return { input, output, may, changes: false };
}

export function changes<I extends z.ZodType, O extends z.ZodType>(may: Permission, input: I, output: O): Operation<I, O> {
  return { input, output, may, changes: true };
}
