import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { DoorEvent } from '../../app/contract/index.ts';
import type { Failure, Reply } from '../../app/contract/failure.ts';
import { decodeWire, encodeWire, WIRE_TYPE } from '../../app/contract/wire.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { Session } from '../services/service.ts';
import type { CallsInFlight } from './calls-in-flight.ts';
import { createEventStreams, type EventStreams } from './event-streams.ts';
import { LoopbackGate } from './loopback-gate.ts';
import { readAsset } from './read-asset.ts';
import { BODY_LIMIT_BYTES, readBody } from './read-body.ts';
import { SECURITY_HEADERS } from './security-headers.ts';

export type LoopbackOptions = {
  /** 0 for any free one. */
  readonly port: number;
  readonly pageFolder: string;
  readonly calls: Promise<Pick<CallsInFlight, 'run'>>;
  /** Texts that nobody can guess, for the token and the cookie. */
  newSecret(): string;
  readonly bodyLimit?: number;
};

export type LoopbackHost = {
  /** With the one-time token. */
  readonly address: string;
  readonly port: number;
  announce(event: DoorEvent): void;
  close(): Promise<void>;
};

type Inside = { readonly gate: LoopbackGate; readonly streams: EventStreams; readonly options: LoopbackOptions };

/**
 * Serves the window to a browser on this machine:
 *
 *     GET  /            the page and its files
 *     POST /call/NAME   one call: body and answer in the wire codec (app/contract/wire.ts), the answer is always a Reply
 *     GET  /events      what main tells the window, as server-sent events, each one line of JSON
 *
 * Never listens on anything but 127.0.0.1. Fails with a sentence where the port is taken.
 */
export async function startLoopbackHost(options: LoopbackOptions): Promise<Result<LoopbackHost, string>> {
  const streams = createEventStreams();
  let inside: Inside | null = null;
  const server = createServer((request, response) => {
    if (inside === null) { response.destroy(); return; }
    answer(inside, request, response).catch(() => { response.destroy(); });
  });
  const listening = await listen(server, options.port);
  if (!listening.ok) return listening;
  const port = listening.value;
  const gate = new LoopbackGate(port, () => options.newSecret());
  inside = { gate, streams, options };
  return ok({
    address: gate.address, port,
    announce(event) { streams.send(event); },
    async close() {
      streams.close();
      const closed = new Promise((resolve) => { server.close(resolve); });
      server.closeIdleConnections();
      const insist = setTimeout(() => { server.closeAllConnections(); }, CLOSE_LIMIT_MS);
      await closed;
      clearTimeout(insist);
    },
  });
}

/** Answers that are still being sent get this long. */
const CLOSE_LIMIT_MS = 2_000;

function listen(server: Server, port: number): Promise<Result<number, string>> {
  return new Promise((resolve) => {
    server.once('error', (fault: NodeJS.ErrnoException) => {
      resolve(err(fault.code === 'EADDRINUSE'
        ? `Port ${port} is used by another program. Choose another with --port, or leave it out for any free one.`
        : `Culet cannot listen on 127.0.0.1 port ${port} (${fault.code ?? fault.message}).`));
    });
    server.listen({ host: '127.0.0.1', port }, () => { resolve(ok((server.address() as AddressInfo).port)); });
  });
}

async function answer(inside: Inside, request: IncomingMessage, response: ServerResponse): Promise<void> {
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
  const { path, token } = splitTarget(request.url ?? '/');
  const verdict = inside.gate.judge({ method: request.method ?? 'GET', path, token, headers: request.headers });
  switch (verdict.kind) {
    case 'refuse': return refuse(request, response, verdict.status, verdict.failure);
    case 'enter': response.setHeader('Set-Cookie', verdict.cookie); return toThePage(response);
    case 'page': return toThePage(response);
    case 'admit': return serve(inside, verdict.session, path, request, response);
  }
}

/** The target is taken apart by hand: a URL parser would fold `..` away, and nothing that needs folding is ours. */
function splitTarget(target: string): { path: string; token: string | null } {
  const at = target.indexOf('?');
  if (at < 0) return { path: target, token: null };
  return { path: target.slice(0, at), token: new URLSearchParams(target.slice(at + 1)).get('token') };
}

function toThePage(response: ServerResponse): void {
  response.writeHead(303, { Location: '/' }).end();
}

async function serve(inside: Inside, session: Session, path: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (request.method === 'POST' && path.startsWith('/call/')) return answerCall(inside, session, path.slice('/call/'.length), request, response);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(request, response, 405, nothingHere('Culet does not answer this kind of request.'));
  if (path === '/events') { inside.streams.open(session, response); return; }
  const asset = await readAsset(inside.options.pageFolder, path);
  if (asset === null) return refuse(request, response, 404, nothingHere('There is nothing at this address.'));
  response.writeHead(200, { 'Content-Type': asset.mediaType, 'Content-Length': asset.body.byteLength });
  response.end(request.method === 'HEAD' ? undefined : asset.body);
}

async function answerCall(inside: Inside, session: Session, name: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  // A page elsewhere can send simple kinds of content without asking; this one it cannot.
  if (request.headers['content-type'] !== WIRE_TYPE) return refuse(request, response, 415, unreadable(`A call is of the type ${WIRE_TYPE}.`));
  const limit = inside.options.bodyLimit ?? BODY_LIMIT_BYTES;
  const body = await readBody(request, limit);
  if (!body.ok) return refuse(request, response, body.error === 'too-large' ? 413 : 400, body.error === 'too-large' ? tooLarge(limit) : unreadable('The call broke off.'));
  const input = decoded(body.value);
  if (!input.ok) return refuse(request, response, 400, unreadable('The call could not be read.'));
  const gone = new AbortController();
  response.on('close', () => { gone.abort(); });
  const reply = await (await inside.options.calls).run(name, input.value, {
    session, gone: gone.signal, emit: (event) => { inside.streams.send(event, session); },
  });
  sendReply(response, 200, reply);
}

function decoded(body: Uint8Array): Result<unknown, null> {
  try {
    return ok(decodeWire(body));
  } catch {
    return err(null);
  }
}

/** Refusals have the shape of a reply, so that the window can say them like any other. */
function refuse(request: IncomingMessage, response: ServerResponse, status: number, failure: Failure): void {
  // What is still being sent is let through unread, or the browser would report a broken connection instead of the sentence.
  request.resume();
  response.setHeader('Connection', 'close');
  if (wantsPage(request)) {
    response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(`${failure.message}\n${failure.next}\n`);
    return;
  }
  sendReply(response, status, err(failure));
}

function wantsPage(request: IncomingMessage): boolean {
  return request.method === 'GET' && (request.headers.accept ?? '').includes('text/html');
}

function sendReply(response: ServerResponse, status: number, reply: Reply<unknown>): void {
  const body = encodeWire(reply);
  response.writeHead(status, { 'Content-Type': WIRE_TYPE, 'Content-Length': body.byteLength }).end(body);
}

const nothingHere = (message: string): Failure => ({ code: 'not-found', message, next: 'Go back to the page Culet opened.' });

const unreadable = (message: string): Failure => ({ code: 'unreadable', message, next: 'Reload the page and try again.' });

const tooLarge = (limit: number): Failure => ({
  code: 'refused',
  message: `That is more than ${Math.floor(limit / (1024 * 1024))} MB at once.`,
  next: 'Hand in fewer files at a time.',
});
