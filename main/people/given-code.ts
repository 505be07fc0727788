import { randomBytes } from 'node:crypto';
import { CODE_LENGTH, readCode, writeCode } from '../../app/people/written-code.ts';
import type { NewCredential } from '../../db/store/credentials.ts';
import { newCredential } from './derive-credential.ts';

/** A code that is good once, or what stands on a recovery sheet, with the credential it leaves behind: it is told this one time. */
export async function givenCode(id: string, kind: 'code' | 'recovery'): Promise<{ readonly code: string; readonly credential: NewCredential }> {
  const code = writeCode(randomBytes(kind === 'code' ? CODE_LENGTH.once : CODE_LENGTH.recovery));
  return { code, credential: (await newCredential(id, kind, readCode(code))).credential };
}
