/** Where the window's page lives: a standard, secure scheme with one host. */
export const PAGE_SCHEME = 'app';
export const PAGE_HOST = 'main';
export const PAGE_URL = `${PAGE_SCHEME}://${PAGE_HOST}/`;

/** True for the top frame of the window's own page, and for nobody else who might send a call. */
export function isOurFrame(frame: { readonly url: string; readonly parent: unknown } | null | undefined): boolean {
  return frame !== null && frame !== undefined && frame.parent === null && isOurUrl(frame.url);
}

export function isOurUrl(raw: string): boolean {
  try {
    const url = new URL(raw);
    return url.protocol === `${PAGE_SCHEME}:` && url.host === PAGE_HOST;
  } catch {
    return false;
  }
}
