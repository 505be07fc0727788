import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as httpRequest, type IncomingHttpHeaders, type OutgoingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { decodeWire, encodeWire, WIRE_TYPE } from '../../../../app/contract/wire.ts';
import { ok } from '../../../../app/result.ts';
import type { Caller } from '../../../../main/host/calls-in-flight.ts';
import { startLoopbackHost, type LoopbackHost } from '../../../../main/host/loopback-host.ts';

type Answer = { status: number; headers: IncomingHttpHeaders; body: Buffer; text: string };
type Asked = { name: string; raw: unknown; caller: Caller };

let folder = '';
let host: LoopbackHost;
let asked: Asked[] = [];
let secrets = 0;
let reply: (call: Asked) => Promise<unknown>;

async function start(port = 0) {
  return startLoopbackHost({
    port, pageFolder: path.join(folder, 'page'), bodyLimit: 3 * 1024 * 1024, newSecret: () => `secret-${++secrets}`,
    calls: Promise.resolve({
      run: async (name: string, raw: unknown, caller: Caller) => {
        const call = { name, raw, caller };
        asked.push(call);
        return ok(await reply(call));
      },
    }),
  });
}

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-loopback-'));
  mkdirSync(path.join(folder, 'page'));
  writeFileSync(path.join(folder, 'page', 'index.html'), '<p>the page</p>');
  writeFileSync(path.join(folder, 'secret.txt'), 'secret');
  asked = [];
  secrets = 0;
  reply = () => Promise.resolve('answer');
  const started = await start();
  if (!started.ok) throw new Error(started.error);
  host = started.value;
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Node's own client sends whatever headers it is told, which a browser would not. */
function send(method: string, target: string, headers: OutgoingHttpHeaders = {}, body: string | Buffer = ''): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = httpRequest({ agent: false, host: '127.0.0.1', port: host.port, method, path: target, headers: { host: `127.0.0.1:${host.port}`, ...headers } }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => { parts.push(part); });
      response.on('end', () => { resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts), text: Buffer.concat(parts).toString('utf8') }); });
    });
    request.on('error', reject);
    request.end(body);
  });
}

const tokenTarget = () => new URL(host.address).pathname + new URL(host.address).search;

async function enter(): Promise<string> {
  const answer = await send('GET', tokenTarget());
  return String(answer.headers['set-cookie']?.[0]).split(';')[0]!;
}

const own = (cookie: string): OutgoingHttpHeaders => ({ cookie, origin: `http://127.0.0.1:${host.port}`, 'content-type': WIRE_TYPE });

describe('being let in', () => {
  test('the token gives a cookie that scripts cannot read and other sites cannot use, and leaves the address', async () => {
    const answer = await send('GET', tokenTarget());
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    expect(answer.headers['set-cookie']?.[0]).toMatch(/^culet-\d+=secret-2; Path=\/; HttpOnly; SameSite=Strict$/);
  });

  test('the token is good once', async () => {
    await enter();
    const again = await send('GET', tokenTarget(), { accept: 'text/html' });
    expect(again.status).toBe(401);
    expect(again.headers['set-cookie']).toBeUndefined();
    expect(again.text).toContain('used before');
  });

  test('who is already inside may open the old address again', async () => {
    const cookie = await enter();
    expect(await send('GET', tokenTarget(), { cookie })).toMatchObject({ status: 303 });
  });

  test.each(['wrong', '', 'secret-1x', '%73ecret-2'])('the token %j is not the token', async (token) => {
    expect(await send('GET', `/?token=${token}`)).toMatchObject({ status: 401 });
  });

  test('without cookie: nothing, neither page nor call nor events', async () => {
    for (const target of ['/', '/index.html', '/events']) expect((await send('GET', target)).status).toBe(401);
    expect((await send('POST', '/call/people.list', { origin: `http://127.0.0.1:${host.port}`, 'content-type': WIRE_TYPE }, '{}')).status).toBe(401);
    expect(asked).toEqual([]);
  });

  test('a made-up cookie, or one under the name of another port, is none', async () => {
    const cookie = await enter();
    expect((await send('GET', '/', { cookie: `culet-${host.port}=nonsense` })).status).toBe(401);
    expect((await send('GET', '/', { cookie: `culet-1=${cookie.split('=')[1]!}` })).status).toBe(401);
  });
});

describe('who asks', () => {
  test.each(['localhost:PORT', 'evil.example:PORT', '127.0.0.1', '127.0.0.1:1', '127.0.0.1.evil.example:PORT'])('refuses the host %s', async (name) => {
    const cookie = await enter();
    expect((await send('GET', '/', { cookie, host: name.replace('PORT', String(host.port)) })).status).toBe(421);
  });

  test.each(['http://evil.example', 'null', 'http://localhost:PORT', 'https://127.0.0.1:PORT', 'http://127.0.0.1:1'])('refuses the origin %s', async (origin) => {
    const cookie = await enter();
    const answer = await send('POST', '/call/people.list', { ...own(cookie), origin: origin.replace('PORT', String(host.port)) }, '{}');
    expect(answer.status).toBe(403);
    expect(asked).toEqual([]);
  });

  test('refuses a call that names no origin, and one from a form', async () => {
    const cookie = await enter();
    expect((await send('POST', '/call/people.list', { cookie, 'content-type': WIRE_TYPE }, '{}')).status).toBe(403);
    expect((await send('POST', '/call/people.list', { ...own(cookie), 'content-type': 'text/plain' }, '{}')).status).toBe(415);
    expect(asked).toEqual([]);
  });

  test.each(['cross-site', 'same-site'])('refuses what the browser calls %s', async (site) => {
    const cookie = await enter();
    expect((await send('GET', '/index.html', { cookie, 'sec-fetch-site': site })).status).toBe(403);
  });

  test('lets nobody share answers across origins', async () => {
    const cookie = await enter();
    const answer = await send('OPTIONS', '/call/people.list', { cookie, origin: `http://127.0.0.1:${host.port}`, 'access-control-request-method': 'POST' });
    expect(answer.status).toBe(405);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });
});

describe('answers', () => {
  test('carry the policy and are never kept', async () => {
    const cookie = await enter();
    for (const answer of [await send('GET', '/', { cookie }), await send('GET', '/nothing', { cookie }), await send('GET', '/')]) {
      expect(answer.headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self';/);
      expect(answer.headers).toMatchObject({ 'cache-control': 'no-store', 'x-content-type-options': 'nosniff', 'x-frame-options': 'DENY' });
    }
  });

  test('the page, and nothing beside it', async () => {
    const cookie = await enter();
    expect(await send('GET', '/', { cookie })).toMatchObject({ status: 200, text: '<p>the page</p>' });
    expect(await send('HEAD', '/', { cookie })).toMatchObject({ status: 200, text: '' });
    for (const target of ['/../secret.txt', '/..%2fsecret.txt', '/%2e%2e%2fsecret.txt', '/%zz', '//127.0.0.1/x']) expect((await send('GET', target, { cookie })).status).toBe(404);
  });

  test('a call takes and gives bytes and numbers as they are', async () => {
    reply = ({ raw }) => Promise.resolve({ back: raw, spectrum: Float64Array.of(NaN, -0, 736.8) });
    const cookie = await enter();
    const input = { bytes: Uint8Array.of(0, 255), odd: -0 };
    const answer = await send('POST', '/call/runs.record', own(cookie), Buffer.from(encodeWire(input)));
    expect(answer.status).toBe(200);
    expect(decodeWire(answer.body)).toStrictEqual({ ok: true, value: { back: input, spectrum: Float64Array.of(NaN, -0, 736.8) } });
    expect(asked[0]!.name).toBe('runs.record');
  });

  test('one cookie, one session', async () => {
    const cookie = await enter();
    reply = ({ caller }) => { caller.session.personId = 'mara'; return Promise.resolve(null); };
    await send('POST', '/call/people.actAs', own(cookie), '{}');
    await send('POST', '/call/people.list', own(cookie), '{}');
    expect(asked[1]!.caller.session).toBe(asked[0]!.caller.session);
  });

  test('what cannot be read is refused in words', async () => {
    const cookie = await enter();
    for (const body of ['', '{', '{"$bytes": 5}', '['.repeat(200_000)]) {
      const answer = await send('POST', '/call/people.list', own(cookie), body);
      expect(answer.status).toBe(400);
      expect(decodeWire(answer.body)).toMatchObject({ ok: false, error: { code: 'unreadable' } });
    }
    expect(asked).toEqual([]);
  });

  test('too much at once is refused in words, announced or not', async () => {
    const cookie = await enter();
    const body = Buffer.alloc(5 * 1024 * 1024, 'x');
    for (const headers of [{ ...own(cookie), 'content-length': body.byteLength }, { ...own(cookie), 'transfer-encoding': 'chunked' }]) {
      const answer = await send('POST', '/call/runs.record', headers, body);
      expect(answer.status).toBe(413);
      expect(decodeWire(answer.body)).toMatchObject({ ok: false, error: { code: 'refused', message: 'That is more than 3 MB at once.' } });
    }
  });

  test('a caller who goes away is noticed', async () => {
    const cookie = await enter();
    const noticed = new Promise<void>((resolve) => {
      reply = ({ caller }) => new Promise(() => { caller.gone.addEventListener('abort', () => { resolve(); }); });
    });
    const request = httpRequest({ host: '127.0.0.1', port: host.port, method: 'POST', path: '/call/ledgers.verify', headers: { host: `127.0.0.1:${host.port}`, ...own(cookie) } });
    request.on('error', () => undefined);
    request.end('{}');
    await expect.poll(() => asked.length).toBe(1);
    request.destroy();
    await noticed;
  });
});

describe('events', () => {
  /** Reads a stream until `count` events have come. */
  function listen(cookie: string, count: number): { heard: Promise<unknown[]>; open: Promise<void> } {
    let opened: () => void = () => undefined;
    const open = new Promise<void>((resolve) => { opened = resolve; });
    const heard = new Promise<unknown[]>((resolve) => {
      const request = httpRequest({ host: '127.0.0.1', port: host.port, path: '/events', headers: { host: `127.0.0.1:${host.port}`, cookie } }, (response) => {
        let text = '';
        opened();
        response.on('data', (part: Buffer) => {
          text += part.toString('utf8');
          const events = [...text.matchAll(/^data: (.*)$/gm)].map((match) => JSON.parse(match[1]!) as unknown);
          if (events.length >= count) { request.destroy(); resolve(events); }
        });
        response.on('error', () => undefined);
      });
      request.on('error', () => undefined);
      request.end();
    });
    return { heard, open };
  }

  test('a change reaches every window, progress only the one that asked', async () => {
    const cookie = await enter();
    const stream = listen(cookie, 2);
    await stream.open;
    reply = ({ caller }) => { caller.emit({ kind: 'progress', task: 'verify', done: 1, total: 2, note: '' }); return Promise.resolve(null); };
    await send('POST', '/call/ledgers.verify', own(cookie), '{}');
    host.announce({ kind: 'changed', operation: 'cases.takeIn' });
    expect(await stream.heard).toEqual([{ kind: 'progress', task: 'verify', done: 1, total: 2, note: '' }, { kind: 'changed', operation: 'cases.takeIn' }]);
  });
});

test('a taken port is said in words', async () => {
  expect(await start(host.port)).toEqual({ ok: false, error: expect.stringContaining(`Port ${host.port} is used`) as string });
});

test('closing ends the streams and lets go of the port', async () => {
  const cookie = await enter();
  let closed: Promise<void> = Promise.resolve();
  const ended = new Promise<void>((resolve) => {
    const request = httpRequest({ host: '127.0.0.1', port: host.port, path: '/events', headers: { host: `127.0.0.1:${host.port}`, cookie } }, (response) => {
      response.on('end', () => { resolve(); });
      response.resume();
      closed = host.close();
    });
    request.end();
  });
  await ended;
  await closed;
  await expect(send('GET', '/')).rejects.toThrow(/ECONNREFUSED/);
});
