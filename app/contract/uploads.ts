import { z } from 'zod';
import { MAX_ARCHIVE_BYTES } from '../bundle/zip-form.ts';
import { done, id, line } from './common.ts';
import { reads } from './operation.ts';

/** A large file goes to the program in pieces of this length, bytes: neither side ever holds more of it, and neither stands still. */
export const UPLOAD_PIECE_BYTES = 2 * 1024 * 1024;

/** Largest file that is carried, bytes: the largest zip that every program can unpack, with its directory. */
export const MAX_UPLOAD_BYTES = MAX_ARCHIVE_BYTES + 64 * 1024 * 1024;

/** Largest report that is checked, bytes: unlike a bundle it has to be looked at as a whole. */
export const MAX_REPORT_BYTES = 512 * 1024 * 1024;

const piece = z.custom<Uint8Array>((value) => value instanceof Uint8Array && value.byteLength > 0 && value.byteLength <= UPLOAD_PIECE_BYTES, 'This is not a piece of a file.');
const place = z.number().int().nonnegative();

/**
 * Carrying a file that is looked at and mostly not kept. It lies in a temporary file of its own beside the casebook until it is dropped, another
 * one is begun at this window, or the program ends. A page is never told to name a path: what it may have looked at is what a person handed it.
 */
export const uploadsContract = {
  'uploads.begin': reads('door', z.strictObject({ name: line(1000), size: place.max(MAX_UPLOAD_BYTES, 'The file is larger than 4 GB.') }), z.object({ upload: id })),
  /** The next piece; `at` is where it begins, which is how many bytes came before. */
  'uploads.piece': reads('door', z.strictObject({ upload: id, at: place, bytes: piece }), z.object({ received: z.number() })),
  /** Lets go of it, and stops whatever is being done with it. */
  'uploads.drop': reads('door', z.strictObject({ upload: id }), done),
};
