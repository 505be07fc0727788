import type { Input, OperationName, Output } from '../../../app/contract/index.ts';
import type { Reply } from '../../../app/contract/failure.ts';
import { decodeWire, encodeWire, WIRE_TYPE } from '../../../app/contract/wire.ts';
import type { OpenCulet } from '../harness/launch.ts';

type AnyDoor = { call(name: string, input: unknown): Promise<unknown> };

/** Asks through the window's own door, in the window's own session; bytes may go either way, arrays of floats may not. */
export async function askDoor<K extends OperationName>({ page }: Pick<OpenCulet, 'page'>, name: K, input: Input<K>): Promise<Reply<Output<K>>> {
  const inProgram = await page.evaluate(() => 'culet' in window);
  return (inProgram ? await askElectron(page, name, input) : await askLoopback(page, name, input)) as Reply<Output<K>>;
}

/** Posts the call from inside the page: the driver carries texts only, so the body goes through it as base64. */
async function askLoopback(page: OpenCulet['page'], operation: string, input: unknown): Promise<unknown> {
  const answer = await page.evaluate(async ({ to, type, sent }) => {
    const body = Uint8Array.from(atob(sent), (character) => character.charCodeAt(0));
    const reply = new Uint8Array(await (await fetch(to, { method: 'POST', headers: { 'content-type': type }, body })).arrayBuffer());
    return btoa(Array.from(reply, (byte) => String.fromCharCode(byte)).join(''));
  }, { to: `/call/${operation}`, type: WIRE_TYPE, sent: Buffer.from(encodeWire(input)).toString('base64') });
  return decodeWire(Buffer.from(answer, 'base64'));
}

/** Calls what the preload offers: there the values travel as they are, and only to the driver as text. */
async function askElectron(page: OpenCulet['page'], operation: string, input: unknown): Promise<unknown> {
  const answer = await page.evaluate(async ({ name, text }) => {
    const door = (window as unknown as { culet: AnyDoor }).culet;
    const bytesOf = (base64: string) => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    const textOf = (bytes: Uint8Array) => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
    const given: unknown = JSON.parse(text, (_key, value: unknown) => (
      typeof value === 'object' && value !== null && 'bytes64' in value ? bytesOf(String(value.bytes64)) : value));
    const reply = await door.call(name, given);
    return JSON.stringify(reply, (_key, value: unknown) => (value instanceof Uint8Array ? { bytes64: textOf(value) } : value));
  }, { name: operation, text: JSON.stringify(asText(input)) });
  return JSON.parse(answer, (_key, value: unknown) => (
    typeof value === 'object' && value !== null && 'bytes64' in value ? Uint8Array.from(Buffer.from(String(value.bytes64), 'base64')) : value));
}

/** Bytes as an object with their base64: JSON.stringify alone would ask a Buffer for its own form first. */
function asText(value: unknown): unknown {
  if (value instanceof Uint8Array) return { bytes64: Buffer.from(value).toString('base64') };
  if (Array.isArray(value)) return value.map(asText);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, asText(inner)]));
}

/** The same where the answer must be good. @throws with the door's own sentences when it is not */
export async function callDoor<K extends OperationName>(culet: Pick<OpenCulet, 'page'>, name: K, input: Input<K>): Promise<Output<K>> {
  const reply = await askDoor(culet, name, input);
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message} ${reply.error.next} ${JSON.stringify(reply.error.fields ?? {})}`);
  return reply.value;
}
