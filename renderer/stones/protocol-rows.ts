import type { StoneFolder } from '../../app/contract/work.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { isPossible } from '../../app/evidence/possible-methods.ts';

export type ProtocolRow = { readonly method: MethodId; readonly says: 'done' | 'next' | '–' | 'may skip'; readonly title: string };

type Folder = Pick<StoneFolder, 'protocol' | 'runs' | 'proposal' | 'item'> & { readonly stone: Pick<StoneFolder['stone'], 'mounted'> };

/**
 * The tests of a stone in the order of its protocol, then those that were done beside it, then the rest that is possible. One is
 * next: what the protocol asks for, or, once nothing is left of it, what would settle the stone.
 */
export function protocolRows({ protocol, runs, proposal, item, stone }: Folder): ProtocolRow[] {
  const done = new Set(runs.map((run) => run.method));
  const steps = protocol?.steps ?? [];
  const next = protocol?.next ?? proposal.nextTests[0]?.method ?? null;
  const inProtocol = new Set(steps.map((step) => step.method));
  const tells = (method: MethodId): string => `${METHODS[method].name}: ${METHODS[method].tells}`;
  const says = (method: MethodId, maySkip: boolean): ProtocolRow['says'] => (done.has(method) && method !== next ? 'done' : method === next ? 'next' : maySkip ? 'may skip' : '–');
  const rest = METHOD_IDS.filter((method) => !inProtocol.has(method) && (done.has(method) || isPossible(method, { mounted: stone.mounted, setting: item.setting })));
  return [
    ...steps.filter(({ method, state }) => state !== 'not-possible' || done.has(method)).map(({ method, state }) => ({
      method, says: says(method, state === 'may-skip'), title: done.has(method) && method === next ? `${tells(method)}; its run does not count` : tells(method),
    })),
    ...rest.sort((a, b) => Number(done.has(b)) - Number(done.has(a))).map((method) => ({ method, says: says(method, false), title: `${tells(method)}; not in the protocol` })),
  ];
}
