const escapeXml = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** The part of ISO 19005 that the file keeps to, and how far (ISO 19005-3, 6.6.4). */
const PDFA = { part: 3, conformance: 'B' } as const;

type Info = Readonly<Record<'Title' | 'Author' | 'Subject' | 'Creator' | 'Producer', string>> & { readonly CreationDate: Date };

/**
 * Replaces the step in which pdfkit writes the document's XMP metadata (ISO 16684-1): it puts the texts in without escaping,
 * so that a laboratory named "A & B" would give a packet that no reader can parse. Says what the document information says, and the same dates.
 */
export function writeEscapedMetadata(doc: PDFKit.PDFDocument): void {
  const inner = doc as unknown as { _addInfo(): void; info: Info; appendXML(xml: string): void };
  inner._addInfo = () => {
    const { Title, Author, Subject, Creator, Producer, CreationDate } = inner.info;
    const at = `${CreationDate.toISOString().slice(0, 19)}Z`;
    inner.appendXML([
      '<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">',
      `<xmp:CreateDate>${at}</xmp:CreateDate><xmp:ModifyDate>${at}</xmp:ModifyDate><xmp:CreatorTool>${escapeXml(Creator)}</xmp:CreatorTool>`,
      `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(Title)}</rdf:li></rdf:Alt></dc:title>`,
      `<dc:creator><rdf:Seq><rdf:li>${escapeXml(Author)}</rdf:li></rdf:Seq></dc:creator>`,
      `<dc:description><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(Subject)}</rdf:li></rdf:Alt></dc:description>`,
      `<pdf:Producer>${escapeXml(Producer)}</pdf:Producer>`,
      '</rdf:Description>',
      '<rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">',
      `<pdfaid:part>${PDFA.part}</pdfaid:part><pdfaid:conformance>${PDFA.conformance}</pdfaid:conformance>`,
      '</rdf:Description>',
    ].join('\n'));
  };
}
