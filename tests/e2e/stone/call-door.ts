import type { Page } from 'playwright-core';
import type { Input, OperationName, Output } from '../../../app/contract/index.ts';

/**
 * Calls an operation as the window does, through the door the host gives it. Values without bytes only.
 * @throws when the operation refuses, with its sentence
 */
export async function callDoor<K extends OperationName>(page: Page, name: K, input: Input<K>): Promise<Output<K>> {
  const reply = await page.evaluate(async ({ name: operation, input: value }) => {
    const own = (window as unknown as { culet?: { call(name: string, input: unknown): Promise<unknown> } }).culet;
    if (own) return own.call(operation, value);
    const response = await fetch(`/call/${operation}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(value) });
    return response.json() as Promise<unknown>;
  }, { name, input: input as unknown }) as { ok: true; value: Output<K> } | { ok: false; error: { message: string; next: string; fields?: unknown } };
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${reply.error.next} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.value;
}
