import type { Failure } from '../../app/contract/failure.ts';
import { normalPassword } from '../../app/people/check-password.ts';
import { waitAfterFailures } from '../../app/people/failure-delay.ts';
import { readCode } from '../../app/people/written-code.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Change } from '../../db/change.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { Credential } from '../../db/store/credentials.ts';
import { openCredential } from './derive-credential.ts';

const wrong = (credential: Credential): { readonly ok: false; readonly error: Failure } => {
  const message = credential.kind === 'recovery' ? 'This is not what stands on the recovery sheet.' : credential.kind === 'code' ? 'This is not the code that was given out.' : 'The name and the password do not belong together.';
  return err({ code: 'refused', message, next: 'Look whether the capital letters are locked, and try again. Every wrong attempt is written down.', fields: { [credential.kind === 'recovery' ? 'recovery' : 'password']: message } });
};

const tooSoon = (waitMs: number, failures: number): { readonly ok: false; readonly error: Failure } =>
  err({ code: 'busy', message: `There were ${failures} wrong attempts in a row.`, next: `Try again in ${Math.ceil(waitMs / 1000)} seconds, or ask a manager for a new code.` });

/** What a secret opens, the wait after wrong attempts kept and each wrong one written into the audit ledger. Call in turn. */
export async function prove(casebook: Casebook, change: Change, credential: Credential, typed: string): Promise<Result<Uint8Array, Failure>> {
  const wait = credential.failedAt === null ? 0 : waitAfterFailures(credential.failures, Date.parse(change.at) - Date.parse(credential.failedAt));
  if (wait > 0) return tooSoon(wait, credential.failures);
  const privatePart = await openCredential(credential, credential.kind === 'password' ? normalPassword(typed) : readCode(typed));
  if (privatePart !== null) return ok(privatePart);
  await casebook.credentials.noteFailure({ ...change, personId: null }, credential.id);
  return wrong(credential);
}
