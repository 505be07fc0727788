/** One operator of a content stream with what stood before it. Strings come as bytes, one character each. */
export type Operation = { readonly operator: string; readonly operands: readonly (string | { readonly text: string })[] };

/** ISO 32000-1:2008, Annex A, Table A.1: every operator there is. */
export const OPERATORS = new Set(('b B b* B* BDC BI BMC BT BX c cm cs CS d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j J K k l m M MP n q Q re RG rg ri s S SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W* y \' "').split(' '));

const SPACE = /[\0\t\n\f\r ]/;
const ENDS_WORD = /[\0\t\n\f\r ()<>[\]{}/%]/;

function literal(text: string, from: number): { bytes: string; next: number } {
  let depth = 1;
  let bytes = '';
  let i = from + 1;
  while (i < text.length && depth > 0) {
    const c = text[i]!;
    if (c === '\\') {
      const octal = /^[0-7]{1,3}/.exec(text.slice(i + 1, i + 4))?.[0];
      const simple = ({ n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' } as Record<string, string>)[text[i + 1]!];
      bytes += octal === undefined ? simple ?? (/[\r\n]/.test(text[i + 1]!) ? '' : text[i + 1]!) : String.fromCharCode(Number.parseInt(octal, 8));
      i += 1 + (octal?.length ?? 1);
      continue;
    }
    if (c === '(') depth += 1;
    if (c === ')') depth -= 1;
    if (depth > 0) bytes += c;
    i += 1;
  }
  return { bytes, next: i };
}

const fromHex = (digits: string): string => Buffer.from(digits.replace(/\s/g, '').padEnd(digits.length + (digits.length % 2), '0'), 'hex').toString('latin1');

/** Reads a content stream without images in it; throws on one that holds such. */
export function operationsOf(content: Uint8Array): Operation[] {
  const text = Buffer.from(content).toString('latin1');
  const operations: Operation[] = [];
  let operands: Operation['operands'][number][] = [];
  for (let i = 0; i < text.length;) {
    const c = text[i]!;
    if (SPACE.test(c) || '[]{}'.includes(c)) { i += 1; continue; }
    if (c === '%') { i += text.slice(i).search(/[\r\n]|$/); continue; }
    if (c === '(') { const { bytes, next } = literal(text, i); operands.push({ text: bytes }); i = next; continue; }
    if (text.startsWith('<<', i) || text.startsWith('>>', i)) { i += 2; continue; }
    if (c === '<') { const end = text.indexOf('>', i); operands.push({ text: fromHex(text.slice(i + 1, end)) }); i = end + 1; continue; }
    let end = i + 1;
    while (end < text.length && !ENDS_WORD.test(text[end]!)) end += 1;
    const word = text.slice(i, end);
    i = end;
    if (word.startsWith('/') || /^[+-]?(\d+\.?\d*|\.\d+)$/.test(word) || word === 'true' || word === 'false' || word === 'null') { operands.push(word); continue; }
    if (word === 'BI') throw new Error('an image stands in the content stream: this reader does not know where it ends');
    operations.push({ operator: word, operands });
    operands = [];
  }
  return operations;
}
