import type { Door, DoorEvent, Input, OperationName, Output } from '../app/contract/index.ts';
import type { Reply } from '../app/contract/failure.ts';
import { decodeWire, encodeWire, WIRE_TYPE } from '../app/contract/wire.ts';
import { noteLocked } from './people/lock-state.ts';
import { readInPieces } from './read-in-pieces.ts';

declare global {
  interface Window { culet?: Door }
}

/** Browsers keep at most 64 KiB of such requests alive (Fetch standard, HTTP-network-or-cache fetch). */
const KEEPALIVE_BYTES = 60_000;

/** The same door over HTTP on this machine, where the page was not opened by the program's own window. */
function loopbackDoor(): Door {
  return {
    async call<K extends OperationName>(name: K, input: Input<K>): Promise<Reply<Output<K>>> {
      try {
        const body = encodeWire(input);
        // A draft is also put while the page goes away; without keepalive the browser would drop it.
        const keepalive = name === 'drafts.put' && body.byteLength < KEEPALIVE_BYTES;
        const response = await fetch(`/call/${name}`, { method: 'POST', headers: { 'content-type': WIRE_TYPE }, body, keepalive });
        return decodeWire(await readInPieces(response)) as Reply<Output<K>>;
      } catch {
        return { ok: false, error: { code: 'busy', message: 'The program behind this page does not answer.', next: 'Look whether it was closed and start it again. What you typed stands here until the page is closed: copy it over if it is not kept.' } };
      }
    },
    subscribe(listener) {
      const source = new EventSource('/events');
      source.onmessage = (event: MessageEvent<string>) => { listener(JSON.parse(event.data) as DoorEvent); };
      return () => { source.close(); };
    },
  };
}

/** Whatever call comes back as locked, the window shows it at once. */
function watchingForTheLock(inner: Door): Door {
  return {
    async call(name, input) {
      const reply = await inner.call(name, input);
      if (!reply.ok && reply.error.code === 'locked') noteLocked();
      return reply;
    },
    subscribe: (listener) => inner.subscribe(listener),
  };
}

export const door: Door = watchingForTheLock(window.culet ?? loopbackDoor());
