import { spawn } from 'node:child_process';

/** Opens an address in the person's own browser where there is one, and says nothing where there is none. */
export function openBrowser(address: string, platform: NodeJS.Platform): void {
  const [program, args] = opener(address, platform);
  try {
    const child = spawn(program, args, { detached: true, stdio: 'ignore', windowsHide: true });
    child.on('error', () => undefined);
    child.unref();
  } catch {
    // No browser: the address stands on the console.
  }
}

function opener(address: string, platform: NodeJS.Platform): [string, string[]] {
  switch (platform) {
    case 'darwin': return ['open', [address]];
    // The empty text is the window's title: without it, start takes the quoted address for one.
    case 'win32': return ['cmd', ['/c', 'start', '""', address.replaceAll('&', '^&')]];
    default: return ['xdg-open', [address]];
  }
}
