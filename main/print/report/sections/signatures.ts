import { capitalise } from '../../../../app/report/count-words.ts';
import type { SignaturesPart } from '../../../../app/report/sections/signatures.ts';
import { heading } from '../../blocks/heading.ts';
import { paragraph } from '../../blocks/paragraph.ts';
import { signatureLines } from '../../blocks/signature-lines.ts';
import { TEXT } from '../../paper.ts';
import { remember, type ReportContext } from '../context.ts';

export function drawSignatures(context: ReportContext, part: SignaturesPart): void {
  const { sheet } = context;
  const section = sheet.child(sheet.root, 'Sect', { title: 'Signatures' });
  heading(sheet, section, 'Signatures', { keepWith: 84 });
  remember(context, 'signatures');
  if (part.signatures.length === 0) {
    paragraph(sheet, section, 'Nobody has signed this report.', { style: TEXT.warn });
    return;
  }
  signatureLines(sheet, section, part.signatures.map((entry) => ({ name: entry.name, detail: [capitalise(entry.role), entry.on].filter((t) => t.trim() !== '').join(', ') })));
}
