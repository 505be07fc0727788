import { timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import type { Failure } from '../../app/contract/failure.ts';
import type { Session } from '../services/service.ts';

/** What the gate looks at. `path` is the percent-encoded path without the query. */
export type Knock = {
  readonly method: string;
  readonly path: string;
  readonly token: string | null;
  readonly headers: IncomingHttpHeaders;
};

export type Verdict =
  | { readonly kind: 'admit'; readonly session: Session }
  /** The token was good: hand out the cookie and send the browser to the page. */
  | { readonly kind: 'enter'; readonly cookie: string }
  | { readonly kind: 'page' }
  | { readonly kind: 'refuse'; readonly status: number; readonly failure: Failure };

/**
 * Who may come in on 127.0.0.1. Other programs and other web pages on this machine can reach the port too, so:
 * the Host must be the address itself (no name that was made to point here), the Origin must be this page's own,
 * and a cookie is needed that is given once, for the one-time token that stood in the address.
 */
export class LoopbackGate {
  readonly #origin: string;
  readonly #host: string;
  readonly #cookieName: string;
  readonly #newSecret: () => string;
  readonly #sessions = new Map<string, Session>();
  #token: string | null;

  /** `newSecret` gives texts that nobody can guess, made of letters, digits, - and _. */
  constructor(port: number, newSecret: () => string) {
    this.#host = `127.0.0.1:${port}`;
    this.#origin = `http://${this.#host}`;
    // Cookies do not tell ports apart: two programs on one machine must not take each other's.
    this.#cookieName = `culet-${port}`;
    this.#newSecret = newSecret;
    this.#token = newSecret();
  }

  /** The address to open, with the token that is good for one visit. */
  get address(): string {
    return `${this.#origin}/?token=${this.#token ?? ''}`;
  }

  judge(knock: Knock): Verdict {
    const { headers, method } = knock;
    if (headers.host !== this.#host) return refuse(421, 'This address does not belong to Culet.');
    if (headers.origin !== undefined ? headers.origin !== this.#origin : method === 'POST') return refuse(403, 'Another page may not use Culet.');
    const entering = method === 'GET' && knock.path === '/';
    if (!entering && isForeignSite(headers)) return refuse(403, 'Another page may not use Culet.');
    const session = this.#sessionOf(headers.cookie);
    if (entering && knock.token !== null) return this.#enter(knock.token, session);
    return session === null ? refuse(401, 'This browser has not been let in.') : { kind: 'admit', session };
  }

  #enter(token: string, session: Session | null): Verdict {
    if (this.#token !== null && isSame(token, this.#token)) {
      this.#token = null;
      const secret = this.#newSecret();
      this.#sessions.set(secret, { personId: null });
      return { kind: 'enter', cookie: `${this.#cookieName}=${secret}; Path=/; HttpOnly; SameSite=Strict` };
    }
    return session === null ? refuse(401, 'This address was used before; each is good for one visit.') : { kind: 'page' };
  }

  #sessionOf(cookies: string | undefined): Session | null {
    const start = `${this.#cookieName}=`;
    const own = cookies?.split(';').map((cookie) => cookie.trim()).find((cookie) => cookie.startsWith(start));
    return own === undefined ? null : (this.#sessions.get(own.slice(start.length)) ?? null);
  }
}

/** Browsers say from where a request comes; 'none' is a person who typed the address. */
function isForeignSite(headers: IncomingHttpHeaders): boolean {
  const site = headers['sec-fetch-site'];
  return site !== undefined && site !== 'same-origin' && site !== 'none';
}

function isSame(given: string, right: string): boolean {
  const a = Buffer.from(given, 'utf8');
  const b = Buffer.from(right, 'utf8');
  return a.byteLength === b.byteLength && timingSafeEqual(a, b);
}

function refuse(status: number, message: string): Verdict {
  return { kind: 'refuse', status, failure: { code: 'not-allowed', message, next: 'Start Culet again and open the address it prints.' } };
}
