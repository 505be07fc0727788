import type { ReadStream } from 'node:tty';

/** Longest that is typed at a prompt; nobody types more by hand. */
const LONGEST = 1000;

type Terminal = Pick<ReadStream, 'setRawMode' | 'resume' | 'pause' | 'on' | 'off'>;

/**
 * Asks for a password at a terminal without showing what is typed, not even its length. Null where the person stopped (Ctrl+C, or Ctrl+D
 * on an empty line). Backspace takes a character back, Ctrl+U all of them.
 */
export function askSecret(terminal: Terminal, prompt: string, write: (text: string) => void): Promise<string | null> {
  return new Promise((resolve) => {
    const decoder = new TextDecoder();
    let typed: string[] = [];
    const end = (value: string | null): void => {
      terminal.off('data', take);
      terminal.setRawMode(false);
      terminal.pause();
      write('\n');
      resolve(value);
    };
    const take = (piece: Buffer): void => {
      for (const character of decoder.decode(piece, { stream: true })) {
        if (character === '\r' || character === '\n') return end(typed.join(''));
        if (character === '\u0003' || (character === '\u0004' && typed.length === 0)) return end(null);
        if (character === '\u007f' || character === '\b') typed = typed.slice(0, -1);
        else if (character === '\u0015') typed = [];
        else if (character >= ' ' && typed.length < LONGEST) typed.push(character);
      }
    };
    write(prompt);
    terminal.setRawMode(true);
    terminal.on('data', take);
    terminal.resume();
  });
}
