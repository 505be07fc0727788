import type { Input, OperationName, Output } from '../../../app/contract/index.ts';
import type { Reply } from '../../../app/contract/failure.ts';
import { decodeWire, encodeWire } from '../../../app/contract/wire.ts';
import type { OpenCulet } from '../harness/launch.ts';

type AnyDoor = { call(name: string, input: unknown): Promise<unknown> };

/** Asks through the window's own door, in the window's own session; bytes may go either way, arrays of floats may not. */
export async function askDoor<K extends OperationName>({ page }: Pick<OpenCulet, 'page'>, name: K, input: Input<K>): Promise<Reply<Output<K>>> {
  const answer = await page.evaluate(async ({ operation, text }) => {
    const door = (window as unknown as { culet?: AnyDoor }).culet;
    if (door === undefined) {
      return (await fetch(`/call/${operation}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: text })).text();
    }
    const bytesOf = (base64: string) => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    const textOf = (bytes: Uint8Array) => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
    const given: unknown = JSON.parse(text, (_key, value: unknown) => (
      typeof value === 'object' && value !== null && '$bytes' in value ? bytesOf(String(value.$bytes)) : value));
    const reply = await door.call(operation, given);
    return JSON.stringify(reply, (_key, value: unknown) => (value instanceof Uint8Array ? { $bytes: textOf(value) } : value));
  }, { operation: name, text: encodeWire(input) });
  return decodeWire(answer) as Reply<Output<K>>;
}

/** The same where the answer must be good. @throws with the door's own sentences when it is not */
export async function callDoor<K extends OperationName>(culet: Pick<OpenCulet, 'page'>, name: K, input: Input<K>): Promise<Output<K>> {
  const reply = await askDoor(culet, name, input);
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${reply.error.next} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.value;
}
