import type { ServerResponse } from 'node:http';
import type { DoorEvent } from '../../app/contract/index.ts';
import type { Session } from '../services/service.ts';

/** A stream that says nothing for longer may be cut by something in between, and a dead one would not be noticed. */
const HEARTBEAT_MS = 25_000;

export type EventStreams = {
  /** Keeps an answer open as a stream of server-sent events for one session. The headers are already set, not sent. */
  open(session: Session, response: ServerResponse): void;
  /** To every window of one session, or of all. Each event is one line of JSON. */
  send(event: DoorEvent, session?: Session): void;
  close(): void;
};

export function createEventStreams(): EventStreams {
  const streams = new Map<ServerResponse, Session>();
  const heartbeat = setInterval(() => { for (const response of streams.keys()) response.write(': still here\n\n'); }, HEARTBEAT_MS);
  heartbeat.unref();
  return {
    open(session, response) {
      response.writeHead(200, { 'Content-Type': 'text/event-stream; charset=utf-8' });
      response.write(': open\n\n');
      streams.set(response, session);
      response.on('close', () => { streams.delete(response); });
    },
    send(event, session) {
      const text = `data: ${JSON.stringify(event)}\n\n`;
      for (const [response, owner] of streams) if (session === undefined || owner === session) response.write(text);
    },
    close() {
      clearInterval(heartbeat);
      for (const response of streams.keys()) response.end();
      streams.clear();
    },
  };
}
