import type { Page } from 'playwright-core';

/** What went wrong in a page while nobody looked. */
export type Watch = {
  /** Errors on the console (refusals of the content security policy among them) and uncaught exceptions. */
  readonly problems: () => string[];
  /** Addresses asked for that are not the program's own. */
  readonly strangers: () => string[];
};

const OWN = /^(?:app:|data:|blob:|devtools:|about:|file:|https?:\/\/(?:127\.0\.0\.1|localhost)(?::\d+)?(?:\/|$))/;

/** Listens from now on. */
export function watchPage(page: Page): Watch {
  const problems: string[] = [];
  const strangers: string[] = [];
  page.on('console', (message) => { if (message.type() === 'error') problems.push(`${message.text()} (${message.location().url})`); });
  page.on('pageerror', (error) => problems.push(String(error)));
  page.on('request', (request) => { if (!OWN.test(request.url())) strangers.push(request.url()); });
  return { problems: () => [...problems], strangers: () => [...strangers] };
}
