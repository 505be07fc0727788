/** The lines of a text with CR, LF, CRLF or any mixture; line n of the file is entry n − 1. */
export function splitLines(text: string): string[] {
  return text.split(/\r\n|\n|\r/);
}
