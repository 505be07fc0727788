import { DOCUMENT_RULES } from './document-rules.ts';
import { FILE_RULES } from './file-rules.ts';
import { FONT_RULES } from './font-rules.ts';
import { GRAPHICS_RULES } from './graphics-rules.ts';
import { openPdf } from './pdf-file.ts';

const RULES = [...FILE_RULES, ...GRAPHICS_RULES, ...FONT_RULES, ...DOCUMENT_RULES];

/** Clause and sentence of every rule that a file breaks, with what breaks it. */
export async function brokenBy(bytes: Uint8Array): Promise<string[]> {
  const file = await openPdf(bytes);
  return RULES.flatMap(({ clause, says, faults }) => faults(file).map((fault) => `${clause} ${says}: ${fault}`));
}
