/** A sentence about a file with its line, unless it names the line itself. */
export function withLine(remark: { readonly message: string; readonly line?: number }): string {
  if (remark.line === undefined || new RegExp(`\\bline ${remark.line}\\b`, 'i').test(remark.message)) return remark.message;
  return `Line ${remark.line}: ${remark.message}`;
}
