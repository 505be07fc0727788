import { app, type BrowserWindowConstructorOptions, type Session } from 'electron';

/** Stated although most are Electron's defaults: a default can change. */
export const webPreferences = {
  contextIsolation: true, sandbox: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false,
  webviewTag: false, spellcheck: false,
} satisfies BrowserWindowConstructorOptions['webPreferences'];

/** Refuses every permission (Electron grants them unless told otherwise), every navigation, every new window and every embedded page. */
export function hardenEveryWebContents(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, reply) => { reply(false); });
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  refuseForeignDownloads(session);
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => { event.preventDefault(); });
    contents.on('will-redirect', (event) => { event.preventDefault(); });
    contents.on('will-attach-webview', (event) => { event.preventDefault(); });
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}

/** What the page itself made (a report, a figure, a table) may be saved; nothing is fetched from elsewhere. */
function refuseForeignDownloads(session: Session): void {
  session.on('will-download', (event, item) => {
    if (!/^(blob:app:\/\/main\/|data:)/.test(item.getURL())) event.preventDefault();
  });
}
