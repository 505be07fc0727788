import { fromBase64, toBase64 } from './base64.ts';
import { packJson, unpackJson } from './tagged-json.ts';

/** A value of the contract as one text that can be kept: tagged JSON with its bytes in base64. @throws where it holds something that can't be carried */
export const valueToText = (value: unknown): string => packJson(value, toBase64);

/** The value of such a text. @throws where it is malformed */
export const valueOfText = (text: string): unknown => unpackJson(text, (base64) => {
  if (typeof base64 !== 'string') throw new Error('value: bytes must stand as base64');
  return fromBase64(base64);
});
