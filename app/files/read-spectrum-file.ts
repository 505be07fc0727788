import { err, type Result } from '../result.ts';
import { decodeText } from './decode-text.ts';
import { readDelimited } from './read-delimited.ts';
import { readJcamp } from './read-jcamp.ts';
import { readSpc } from './read-spc.ts';
import { refusal } from './refusal.ts';
import { sniffFormat } from './sniff-format.ts';
import { looksLikeSpc } from './spc-header.ts';
import type { ReadError, ReadOptions, ReadSpectrumFile, SpectrumFile } from './spectrum-file.ts';
import { splitLines } from './split-lines.ts';

/** “name”, line n: reason. */
function inFile(name: string, error: ReadError): ReadError {
  const where = error.line === undefined ? `“${name}”` : `“${name}”, line ${error.line}`;
  return { ...error, message: `${where}: ${error.message.charAt(0).toLowerCase()}${error.message.slice(1)}` };
}

function readBytes(name: string, bytes: Uint8Array, options: ReadOptions): Result<SpectrumFile, ReadError> {
  if (looksLikeSpc(bytes)) return readSpc(name, bytes, options);
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;
  const { text } = decoded.value;
  if (text.trim() === '') return refusal('empty-file', 'The file holds no text. Export it again from the instrument.');
  const lines = splitLines(text);
  const format = sniffFormat(lines);
  if (typeof format === 'object') return refusal('not-a-spectrum', `The file is ${format.not}, not a spectrum. Export the data as JCAMP-DX or as text.`);
  return format === 'jcamp-dx' ? readJcamp(lines, options) : readDelimited(name, lines, options);
}

/**
 * Reads an instrument's file: JCAMP-DX, delimited text or SPC, recognised by its content and not by its name. Either every curve of
 * the file comes back, points in the file's order and ordinates after its factors, or the file is refused with code, line and a
 * sentence. Never throws for any bytes.
 */
export const readSpectrumFile: ReadSpectrumFile = (name, bytes, options = {}) => {
  const read = readBytes(name, bytes, options);
  return read.ok ? read : err(inFile(name, read.error));
};
