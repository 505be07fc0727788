import type { Door, DoorEvent, Input, OperationName, Output } from '../app/contract/index.ts';
import type { Reply } from '../app/contract/failure.ts';
import { decodeWire, encodeWire } from '../app/contract/wire.ts';

declare global {
  interface Window { culet?: Door }
}

/** The same door over HTTP on this machine, where the page was not opened by the program's own window. */
function loopbackDoor(): Door {
  return {
    async call<K extends OperationName>(name: K, input: Input<K>): Promise<Reply<Output<K>>> {
      try {
        const response = await fetch(`/call/${name}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: encodeWire(input) });
        return decodeWire(await response.text()) as Reply<Output<K>>;
      } catch {
        return { ok: false, error: { code: 'busy', message: 'The program behind this page does not answer.', next: 'Look whether it was closed; start it again and reload the page. What you typed is kept as a draft.' } };
      }
    },
    subscribe(listener) {
      const source = new EventSource('/events');
      source.onmessage = (event: MessageEvent<string>) => { listener(JSON.parse(event.data) as DoorEvent); };
      return () => { source.close(); };
    },
  };
}

export const door: Door = window.culet ?? loopbackDoor();
