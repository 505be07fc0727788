import type { IncomingMessage } from 'node:http';
import { err, ok, type Result } from '../../app/result.ts';

/** Several files of 64 MB in one call. */
export const BODY_LIMIT_BYTES = 300 * 1024 * 1024;

export type BodyFault = 'too-large' | 'broken-off';

/** The whole body. Too large: reads no further than the limit and keeps nothing. */
export async function readBody(request: IncomingMessage, limit: number = BODY_LIMIT_BYTES): Promise<Result<Uint8Array, BodyFault>> {
  if (Number(request.headers['content-length'] ?? 0) > limit) return err('too-large');
  const parts: Buffer[] = [];
  let size = 0;
  try {
    for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      size += part.byteLength;
      if (size > limit) return err('too-large');
      parts.push(part);
    }
  } catch {
    return err('broken-off');
  }
  return ok(Buffer.concat(parts));
}
