import { ok } from '../../app/result.ts';
import type { Uploads } from '../uploads/uploads.ts';
import type { Services } from './service.ts';

/** Carries a file that a person handed to the window, in pieces. */
export function createUploadsServices(uploads: Uploads): Pick<Services, 'uploads.begin' | 'uploads.piece' | 'uploads.drop'> {
  return {
    async 'uploads.begin'({ name, size }, { session }) {
      const begun = await uploads.begin(session, name, size);
      return begun.ok ? ok({ upload: begun.value }) : begun;
    },
    async 'uploads.piece'({ upload, at, bytes }, { session }) {
      const received = await uploads.piece(session, upload, at, bytes);
      return received.ok ? ok({ received: received.value }) : received;
    },
    async 'uploads.drop'({ upload }, { session }) {
      await uploads.drop(session, upload);
      return ok({ done: true as const });
    },
  };
}
