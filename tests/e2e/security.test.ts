import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';

/** Long enough for a navigation or a new window to have begun. */
const SETTLE_MS = 400;
const settle = () => new Promise((resolve) => { setTimeout(resolve, SETTLE_MS); });

describe.each(availableHosts())('the window in %s', (host) => {
  let culet: OpenCulet;
  beforeAll(async () => { culet = await openCulet({ host }); });
  afterAll(async () => { await culet.close(); });

  /** Runs a script as the page itself would, in a task of its own: what a debugger evaluates is not under the page's policy. */
  const asPage = <T>(body: string): Promise<T> => culet.page.evaluate((source) => new Promise((resolve, reject) => {
    const work = (0, eval)(`(async () => { ${source} })`) as () => Promise<unknown>;
    setTimeout(() => { work().then((value) => { resolve(value as never); }, reject); });
  }), body) as Promise<T>;

  test('has nothing of Node or Electron', async () => {
    const types = await asPage<Record<string, string>>(`return Object.fromEntries(['require', 'process', 'Buffer', 'module', 'global', 'electron', '__dirname'].map((name) => [name, typeof globalThis[name]]));`);
    expect(new Set(Object.values(types))).toEqual(new Set(['undefined']));
  });

  test('is given one door with a call and a subscription, or none where it speaks over HTTP', async () => {
    const door = await asPage<string[] | null>(`return window.culet === undefined ? null : Object.keys(window.culet).sort();`);
    expect(door).toEqual(host === 'electron' ? ['call', 'subscribe'] : null);
  });

  test('is served with a strict policy', async () => {
    const policy = await asPage<string>(`return (await fetch(location.href)).headers.get('content-security-policy');`);
    expect(policy.split('; ')).toEqual([
      "default-src 'none'", "script-src 'self'", "style-src 'self' 'unsafe-inline'", "img-src 'self' data: blob:", "font-src 'self'",
      "connect-src 'self'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'",
    ]);
  });

  test('runs no script that was written into the page, and none made from text', async () => {
    const ran = await asPage<string[]>(`
      const ran = [];
      window.note = (what) => { ran.push(what); };
      const script = document.createElement('script');
      script.textContent = 'window.note("inline script")';
      document.body.append(script);
      const image = document.createElement('img');
      image.setAttribute('onerror', 'window.note("inline handler")');
      image.src = 'nothing-here.png';
      document.body.append(image);
      try { setTimeout('window.note("text timer")', 0); } catch {}
      try { new Function('window.note("function from text")')(); } catch {}
      await new Promise((resolve) => setTimeout(resolve, ${SETTLE_MS}));
      script.remove();
      image.remove();
      return ran;`);
    expect(ran).toEqual([]);
  });

  test('reaches no other server and shows no other page inside it', async () => {
    const refused = await asPage<string[]>(`
      const refused = [];
      document.addEventListener('securitypolicyviolation', (event) => { refused.push(event.effectiveDirective); });
      await fetch('https://example.invalid/').catch(() => undefined);
      const frame = document.createElement('iframe');
      frame.src = 'https://example.invalid/';
      document.body.append(frame);
      await new Promise((resolve) => setTimeout(resolve, ${SETTLE_MS}));
      frame.remove();
      return refused;`);
    expect(refused).toEqual(expect.arrayContaining(['connect-src', 'frame-src']));
  });

  test('asks for a permission in vain', async () => {
    const states = await asPage<Record<string, string>>(`
      const states = {};
      for (const name of ['geolocation', 'camera', 'microphone']) {
        states[name] = await navigator.permissions.query({ name }).then((status) => status.state, () => 'denied');
      }
      states.position = await new Promise((resolve) => { navigator.geolocation.getCurrentPosition(() => resolve('given'), () => resolve('refused')); });
      states.video = navigator.mediaDevices === undefined ? 'refused' : await navigator.mediaDevices.getUserMedia({ video: true }).then(() => 'given', () => 'refused');
      return states;`);
    expect(states).toEqual({ geolocation: 'denied', camera: 'denied', microphone: 'denied', position: 'refused', video: 'refused' });
  });

  test('reads no file beside the page', async () => {
    const statuses = await asPage<number[]>(`
      const paths = ['/../main/main.cjs', '/..%2fmain%2fmain.cjs', '/%2e%2e/main/main.cjs', '/assets/..%2f..%2fmain%2fmain.cjs', '/%00', '/%zz', '/package.json'];
      return Promise.all(paths.map((path) => fetch(path).then((response) => response.status, () => 404)));`);
    expect(new Set(statuses)).toEqual(new Set([404]));
  });

  test('refuses an operation that is not in the contract, in a sentence', async () => {
    const message = await asPage<string>(host === 'electron'
      ? `return (await window.culet.call('__proto__', {})).error.message;`
      : `return (await (await fetch('/call/__proto__', { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body: '{}' })).json()).error.message;`);
    expect(message).toBe('Culet has no operation “__proto__”.');
  });

  test.runIf(host === 'electron')('goes nowhere else and opens no second window', async () => {
    const before = culet.page.url();
    expect(await asPage<boolean>(`return window.open('https://example.invalid/') === null && window.open('app://main/') === null;`)).toBe(true);
    for (const target of ['https://example.invalid/', 'file:///etc/passwd', 'data:text/html,elsewhere', 'app://other/']) {
      await asPage(`location.href = ${JSON.stringify(target)};`);
      await settle();
      expect(culet.page.url()).toBe(before);
    }
    await asPage(`const link = document.createElement('a'); link.href = 'https://example.invalid/'; link.target = '_blank'; document.body.append(link); link.click(); link.remove();`);
    await settle();
    expect(culet.electron!.windows()).toHaveLength(1);
  });

  test.runIf(host === 'electron')('is locked down in the ways Electron offers', async () => {
    const set = await culet.electron!.evaluate(({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]!.webContents as unknown as { getLastWebPreferences(): Record<string, unknown> };
      const { contextIsolation, sandbox, nodeIntegration, webviewTag, webSecurity, allowRunningInsecureContent } = contents.getLastWebPreferences();
      return { contextIsolation, sandbox, nodeIntegration, webviewTag, webSecurity, allowRunningInsecureContent: allowRunningInsecureContent ?? false };
    });
    expect(set).toEqual({ contextIsolation: true, sandbox: true, nodeIntegration: false, webviewTag: false, webSecurity: true, allowRunningInsecureContent: false });
  });
});
