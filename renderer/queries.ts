import { keepPreviousData, QueryClient, useMutation, useQueries, useQuery, type UseQueryResult } from '@tanstack/react-query';
import type { Input, OperationName, Output } from '../app/contract/index.ts';
import type { Failure } from '../app/contract/failure.ts';
import { door } from './door.ts';
import { onLocked, whenUnlocked } from './people/lock-state.ts';

/** A failure that crossed the door, as the error of a query. */
export class DoorFailure extends Error {
  readonly failure: Failure;
  constructor(failure: Failure) {
    super(failure.message);
    this.failure = failure;
  }
}

export const queryClient = new QueryClient({
  defaultOptions: { queries: { retry: false, staleTime: 30_000, refetchOnWindowFocus: false, networkMode: 'always' }, mutations: { networkMode: 'always' } },
});

// A change anywhere may alter any list: what is shown is asked again, what is not shown is marked stale.
door.subscribe((event) => { if (event.kind === 'changed') void queryClient.invalidateQueries(); });

/** Pictures are large: one that is no longer shown is held for a while and then let go. */
const KEPT_MS = 60_000;

onLocked(() => {
  const known = queryClient.getQueryData<Output<'casebook.status'>>(['casebook.status', {}]);
  if (known?.locked !== true) void queryClient.invalidateQueries({ queryKey: ['casebook.status'] });
});

/** Reads again once the window is open: what is shown stays while it is locked. */
export async function askPatiently<K extends OperationName>(name: K, input: Input<K>): Promise<Output<K>> {
  for (;;) {
    const reply = await door.call(name, input);
    if (reply.ok) return reply.value;
    if (reply.error.code !== 'locked') throw new DoorFailure(reply.error);
    await whenUnlocked();
  }
}

async function ask<K extends OperationName>(name: K, input: Input<K>): Promise<Output<K>> {
  const reply = await door.call(name, input);
  if (!reply.ok) throw new DoorFailure(reply.error);
  return reply.value;
}

/** Reads through the door; `input` null waits. */
export function useAsk<K extends OperationName>(name: K, input: Input<K> | null, options: { readonly keep?: boolean; /** Large and soon stale: let go as soon as nobody shows it. */ readonly briefly?: boolean } = {}): UseQueryResult<Output<K>, DoorFailure> {
  return useQuery<Output<K>, DoorFailure>({
    queryKey: [name, input],
    queryFn: () => askPatiently(name, input as Input<K>),
    enabled: input !== null,
    ...(options.keep ? { placeholderData: keepPreviousData } : {}),
    ...(options.briefly ? { gcTime: 0 } : {}),
  });
}

/** Reads what never changes, such as the bytes of a record: asked once, and not again when something else changes. */
export function useAskOnce<K extends OperationName>(name: K, input: Input<K> | null): UseQueryResult<Output<K>, DoorFailure> {
  return useQuery<Output<K>, DoorFailure>({ queryKey: [name, input], queryFn: () => askPatiently(name, input as Input<K>), enabled: input !== null, staleTime: 'static', gcTime: KEPT_MS });
}

/** Reads the same kind of thing several times, in the order of the inputs. */
export function useAskAll<K extends OperationName>(name: K, inputs: readonly Input<K>[]): UseQueryResult<Output<K>, DoorFailure>[] {
  return useQueries({ queries: inputs.map((input) => ({ queryKey: [name, input] as const, queryFn: () => askPatiently(name, input) })) }) as UseQueryResult<Output<K>, DoorFailure>[];
}

/** After these somebody else is at the window, who may not be shown what the one before could see. */
const SOMEBODY_ELSE: ReadonlySet<OperationName> = new Set(['people.actAs', 'people.signIn', 'people.choosePassword', 'people.recover']);

/** Changes something through the door; every list is asked again afterwards. */
export function useChange<K extends OperationName>(name: K) {
  return useMutation<Output<K>, DoorFailure, Input<K>>({
    mutationFn: (input) => ask(name, input),
    onSuccess: () => {
      if (SOMEBODY_ELSE.has(name)) queryClient.removeQueries({ type: 'inactive' });
      return queryClient.invalidateQueries();
    },
  });
}
