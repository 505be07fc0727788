import { utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson, type JsonValue } from '../custody/canonical-json.ts';

/**
 * What the laboratory's key may sign: a JSON object that says in `statement` which kind of statement it is,
 * so that a signature over one kind can't be passed off as one over another.
 */
export type SignedStatement = { readonly statement: string; readonly [member: string]: JsonValue | undefined };

/** The bytes that are signed: UTF-8 of the RFC 8785 form. Throws where the statement can't be written as canonical JSON. */
export const statementBytes = (statement: SignedStatement): Uint8Array => utf8ToBytes(canonicalJson(statement));
