import { protocol, type Session } from 'electron';
import { isOurUrl, PAGE_SCHEME } from './is-our-frame.ts';
import { readAsset } from './read-asset.ts';
import { SECURITY_HEADERS } from './security-headers.ts';

/** Must run before Electron is ready. Never `bypassCSP`. */
export function registerPageScheme(): void {
  protocol.registerSchemesAsPrivileged([{ scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } }]);
}

/** Answers `app://main/…` from the built page, and nothing else. */
export function servePage(session: Session, pageFolder: string): void {
  session.protocol.handle(PAGE_SCHEME, async (request) => {
    const asset = isOurUrl(request.url) ? await readAsset(pageFolder, new URL(request.url).pathname) : null;
    if (asset === null) return new Response('Not found', { status: 404, headers: { ...SECURITY_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' } });
    return new Response(new Uint8Array(asset.body), { headers: { ...SECURITY_HEADERS, 'Content-Type': asset.mediaType } });
  });
}
