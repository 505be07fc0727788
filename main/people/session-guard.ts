import type { CasebookManager } from '../casebook/casebook-manager.ts';
import type { Standing } from '../host/refuse-by-role.ts';
import type { Keyring } from '../keys/keyring.ts';
import type { Session } from '../services/service.ts';
import { inTurn } from './in-turn.ts';

/** Who is at which window, and whether that window is locked. Everything that the door lets in goes past it. */
export type SessionGuard = {
  standing(session: Session): Promise<Standing>;
  /** The person proved to be there. */
  enter(session: Session, personId: string): void;
  /** Somebody is at work: the idle time begins anew. */
  touch(session: Session): void;
  /** Answers nothing until a password is given; lets go of the laboratory's key. */
  lock(session: Session): void;
  leave(session: Session): void;
  /** Work that tries a secret, one after the other. */
  readonly attempt: ReturnType<typeof inTurn>;
};

const MINUTE_MS = 60_000;

export function createSessionGuard({ manager, keyring, now }: { readonly manager: CasebookManager; readonly keyring: Keyring; now(): Date }): SessionGuard {
  const lock = (session: Session): void => {
    session.locked = true;
    keyring.release(session);
  };

  async function lockIfIdle(session: Session): Promise<void> {
    if (session.locked === true || session.activeAt === undefined) return;
    const laboratory = await manager.current()?.laboratory.get();
    if (laboratory === undefined || laboratory === null || laboratory.isDemonstration) return;
    if (now().getTime() - session.activeAt > laboratory.settings.idleMinutes * MINUTE_MS) lock(session);
  }

  return {
    attempt: inTurn(),
    async standing(session) {
      const standing = await manager.standing(session);
      if (standing.person === null) return standing;
      await lockIfIdle(session);
      return { ...standing, locked: session.locked === true };
    },
    enter(session, personId) {
      if (session.personId !== personId) keyring.release(session);
      session.personId = personId;
      session.locked = false;
      session.activeAt = now().getTime();
    },
    touch(session) { if (session.locked !== true) session.activeAt = now().getTime(); },
    lock,
    leave(session) {
      keyring.release(session);
      session.personId = null;
      session.locked = false;
      delete session.activeAt;
    },
  };
}
