import { tmpdir } from 'node:os';
import type { Reply } from '../../../../app/contract/failure.ts';
import type { Input, OperationName, Output } from '../../../../app/contract/index.ts';
import { createCheckpoints } from '../../../../main/checkpoints/checkpoints.ts';
import { dispatch, type House } from '../../../../main/host/dispatch.ts';
import { silentLog } from '../../../../main/host/log.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { noSystemStore, type SystemStore } from '../../../../main/keys/system-store.ts';
import { createSessionGuard } from '../../../../main/people/session-guard.ts';
import { createServices } from '../../../../main/services/index.ts';
import type { Session } from '../../../../main/services/service.ts';
import { createUploads } from '../../../../main/uploads/uploads.ts';
import { verifyOnThisThread } from '../../../../main/verify/verify-with-helpers.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { madeManager, movableClock, type Clock } from '../casebook/made-manager.ts';

export const ADA = 'several invented words';

export type ProgramOptions = {
  /** The key store of the machine it runs on. */
  readonly store?: SystemStore;
  /** Where its casebook lies, to open one that another program made. */
  readonly dataFolder?: string;
  readonly clock?: Clock;
};

/** The program without a host: the real services, by themselves and behind the real dispatcher, and a clock that the test moves. */
export function program({ store = noSystemStore('this is a test'), dataFolder, clock = movableClock() }: ProgramOptions = {}) {
  const { manager, options } = madeManager({ now: clock.now, newId: clock.newId, ...(dataFolder !== undefined && { dataFolder }) });
  const keyring = createKeyring(() => manager.current(), store);
  const guard = createSessionGuard({ manager, keyring, now: options.now });
  const services = createServices({ manager, pool: createInlinePool(), keyring, guard, checkpoints: createCheckpoints({ manager, signer: keyring, now: options.now, newId: options.newId }), verify: verifyOnThisThread, uploads: createUploads({ folder: () => tmpdir(), newId: options.newId }), now: options.now, newId: options.newId, host: { version: '0', host: 'loopback', hostNote: '' } });
  const house: House = { services, standing: (s) => guard.standing(s), touch: (s) => { guard.touch(s); }, announce() {}, log: silentLog, newId: options.newId };
  const ask = <K extends OperationName>(session: Session, name: K, input: Input<K>) =>
    dispatch(house, name, input, { session, signal: new AbortController().signal, emit() {} }) as Promise<Reply<Output<K>>>;
  const value = async <K extends OperationName>(session: Session, name: K, input: Input<K>): Promise<Output<K>> => {
    const reply = await ask(session, name, input);
    if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
    return reply.value;
  };
  return { manager, keyring, services, ask, value, clock, dataFolder: options.dataFolder };
}

export type Program = ReturnType<typeof program>;

/** The same with a casebook that Ada Invented, a manager, just began. */
export async function begun(options: ProgramOptions = {}): Promise<Program & { ada: Session; adaId: string; recovery: string }> {
  const made = program(options);
  const ada: Session = { personId: null };
  const { recovery } = await made.value(ada, 'casebook.create', { name: 'Invented Laboratory', address: '', zone: 'UTC', logo: null, person: { name: 'Ada Invented', initials: 'AI', roles: ['manager'], password: ADA } });
  return { ...made, ada, adaId: ada.personId!, recovery };
}
