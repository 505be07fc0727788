import { expect, test } from 'vitest';
import type { RunView } from '../../../../app/contract/work.ts';
import type { MethodId } from '../../../../app/domain/method.ts';
import { proposeConclusion } from '../../../../app/evidence/propose-conclusion.ts';
import { DEFAULT_PROTOCOLS } from '../../../../app/protocol/default-protocols.ts';
import { protocolStateOf } from '../../../../app/protocol/protocol-state.ts';
import { protocolRows } from '../../../../renderer/stones/protocol-rows.ts';

type Folder = Parameters<typeof protocolRows>[0];
function folder(done: readonly MethodId[], counted: readonly MethodId[] = done, mounted = false): Folder {
  const stone = { mounted, setting: mounted ? 'closed-back' as const : null, colourClass: 'colourless' as const };
  return {
    stone, item: { setting: stone.setting } as Folder['item'], runs: done.map((method) => ({ method }) as RunView),
    protocol: protocolStateOf(DEFAULT_PROTOCOLS, { ...stone, kind: mounted ? 'jewellery' : 'loose' }, new Set(counted)),
    proposal: proposeConclusion({ stone, findings: [], methodsDone: done, methodsAvailable: ['raman', 'growth-pattern'] }),
  };
}
const says = (rows: ReturnType<typeof protocolRows>) => Object.fromEntries(rows.map((row) => [row.method, row.says]));

test('the order is the protocol’s; one test is next', () => {
  const rows = protocolRows(folder(['raman', 'microscopy']));
  expect(rows.slice(0, 4).map((row) => [row.method, row.says])).toEqual([['raman', 'done'], ['microscopy', 'done'], ['fluorescence-long-wave', 'next'], ['fluorescence-short-wave', '–']]);
  expect(says(rows)['growth-pattern']).toBe('may skip');
  expect(rows.filter((row) => row.says === 'next')).toHaveLength(1);
});

test('a test with an instrument out of order is next again, and the tip says why', () => {
  const row = protocolRows(folder(['raman'], []))[0]!;
  expect(row).toMatchObject({ method: 'raman', says: 'next', title: expect.stringContaining('does not count') });
});

test('what was done beside the protocol is listed, and marked so', () => {
  const row = protocolRows(folder(['raman', 'thermal-probe'])).find(({ method }) => method === 'thermal-probe')!;
  expect(row).toMatchObject({ says: 'done', title: expect.stringContaining('not in the protocol') });
});

test('what the setting forbids is not offered', () => {
  expect(protocolRows(folder([], [], true)).map((row) => row.method)).not.toContain('infrared');
});

test('once the protocol is done, what would settle the stone is next', () => {
  const all: MethodId[] = DEFAULT_PROTOCOLS[0]!.steps.filter((step) => !step.maySkip).map((step) => step.method);
  const rows = protocolRows(folder(all));
  expect(rows.filter((row) => row.says === 'next').map((row) => row.method)).toEqual(['raman']);
});
