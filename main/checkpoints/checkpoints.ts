import type { Failure } from '../../app/contract/failure.ts';
import type { OperationName } from '../../app/contract/index.ts';
import { ok, type Result } from '../../app/result.ts';
import { signedOf, type CheckpointReason, type CheckpointStatement } from '../../app/signature/checkpoint-statement.ts';
import { statementBytes } from '../../app/signature/signed-statement.ts';
import type { CasebookManager } from '../casebook/casebook-manager.ts';
import type { Signer } from '../keys/signer.ts';
import { inTurn } from '../people/in-turn.ts';
import { noCasebook } from '../services/failures.ts';
import type { Deps } from '../services/service.ts';
import { keepCheckpointFile } from './checkpoint-files.ts';

/** A checkpoint is made after so many entries of the audit ledger: common practice, no source. */
export const ENTRIES_BETWEEN = 200;

export type MadeCheckpoint = { readonly statement: CheckpointStatement; readonly file: string };

export type Checkpoints = {
  /** Signs how far the ledgers have come, keeps it in the casebook and beside the backups. Fails with the signer's sentence. */
  make(why: CheckpointReason, personId: string | null): Promise<Result<MadeCheckpoint, Failure>>;
  /** After a change: makes one where a report was issued, a day has passed, or many entries have come. Waits for a time when the key is open. */
  after(operation: OperationName): Promise<void>;
  /** Before the casebook is closed: makes one where anything was written since the last. */
  beforeClosing(): Promise<void>;
};

type Options = Deps & { readonly manager: Pick<CasebookManager, 'current' | 'besideBackups'>; readonly signer: Signer };

export function createCheckpoints({ manager, signer, now, newId }: Options): Checkpoints {
  const turn = inTurn();

  async function make(why: CheckpointReason, personId: string | null): Promise<Result<MadeCheckpoint, Failure>> {
    const casebook = manager.current();
    const laboratory = await casebook?.laboratory.get();
    if (casebook === null || laboratory === undefined || laboratory === null) return noCasebook();
    const at = now().toISOString();
    const statement: CheckpointStatement = { statement: 'culet-checkpoint-1', laboratory: laboratory.name, begun: laboratory.createdAt, at, why, ...await casebook.checkpoints.heads() };
    const signed = await signer.sign(statementBytes(statement));
    if (!signed.ok) return signed;
    const checkpoint = signedOf(statement, signed.value);
    await casebook.checkpoints.keep({ at, personId, operation: 'checkpoints.make' }, signed.value.keyId, newId(), checkpoint);
    const { folder, book } = manager.besideBackups();
    return ok({ statement, file: keepCheckpointFile(folder, book, checkpoint, newId()) });
  }

  /** Entries since the last checkpoint; its own entry is not counted. */
  async function since(): Promise<{ readonly entries: number; readonly last: CheckpointStatement | null }> {
    const casebook = manager.current();
    if (casebook === null) return { entries: 0, last: null };
    const [last = null] = await casebook.checkpoints.list(1);
    const { audit } = await casebook.checkpoints.heads();
    return { entries: audit.seq - (last === null ? 0 : last.audit.seq + 1), last };
  }

  async function due(operation: OperationName): Promise<CheckpointReason | null> {
    if (operation === 'reports.issue') return 'report';
    const { entries, last } = await since();
    if (entries >= ENTRIES_BETWEEN) return 'entries';
    return last !== null && entries > 0 && last.at.slice(0, 10) !== now().toISOString().slice(0, 10) ? 'day' : null;
  }

  return {
    make: (why, personId) => turn(() => make(why, personId)),
    after: (operation) => turn(async () => {
      const why = operation.startsWith('casebook.') || operation.startsWith('checkpoints.') ? null : await due(operation);
      if (why !== null) await make(why, null);
    }),
    beforeClosing: () => turn(async () => {
      if ((await since()).entries > 0) await make('closing', null);
    }),
  };
}
