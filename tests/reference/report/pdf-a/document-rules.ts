import { DOMParser } from '@xmldom/xmldom';
import { PDFBool, PDFDict, PDFNumber, PDFRef, type PDFObject } from '@cantoo/pdf-lib';
import { at, decoded, dictsOfType, isRawStream, listAt, nameAt, streamsOf, type PdfFile } from './pdf-file.ts';
import { each, whether, type Rule } from './rule.ts';

const ANNOTATIONS = new Set('Text Link FreeText Line Square Circle Polygon PolyLine Highlight Underline Squiggly StrikeOut Stamp Caret Ink Popup FileAttachment Widget PrinterMark TrapNet Watermark Redact'.split(' '));
const ACTIONS = new Set(['GoTo', 'GoToR', 'GoToE', 'Thread', 'URI', 'Named', 'SubmitForm']);
const RELATIONS = new Set(['Source', 'Data', 'Alternative', 'Supplement', 'EncryptedPayload', 'FormData', 'Schema', 'Unspecified']);
/** Bits of an annotation's flags: ISO 32000-1:2008, Table 165. */
const FLAG = { invisible: 1, hidden: 2, print: 4, noView: 32, toggleNoView: 256 };
/** Namespaces of XMP whose properties need no description of their own, and those of them that are used. */
const XMP_PROPERTIES: Readonly<Record<string, readonly string[]>> = {
  'http://ns.adobe.com/xap/1.0/': ['CreateDate', 'ModifyDate', 'CreatorTool', 'MetadataDate'], 'http://purl.org/dc/elements/1.1/': ['title', 'creator', 'description', 'language', 'format'],
  'http://ns.adobe.com/pdf/1.3/': ['Producer', 'Keywords'], 'http://www.aiim.org/pdfa/ns/id/': ['part', 'conformance'],
};
const RDF = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#';

/** The text of the catalogue's metadata; empty where there is none. */
function xmpOf(file: PdfFile): string {
  const stream = at(file, file.doc.catalog, 'Metadata');
  return stream !== undefined && isRawStream(stream) && nameAt(file, stream.dict, 'Type') === 'Metadata' && nameAt(file, stream.dict, 'Subtype') === 'XML' ? Buffer.from(decoded(stream)).toString('utf8') : '';
}

/** The properties that the metadata state, and what a parser of XML has against them. */
function readXmp(file: PdfFile): { faults: string[]; properties: { namespace: string; name: string; prefix: string; text: string }[] } {
  const faults: string[] = [];
  const hear = (fault: string): void => { faults.push(fault); };
  const document = new DOMParser({ errorHandler: { warning: hear, error: hear, fatalError: hear } }).parseFromString(xmpOf(file) || '<none/>', 'text/xml');
  const properties = Array.from(document.getElementsByTagNameNS(RDF, 'Description')).flatMap((description) => Array.from(description.childNodes))
    .filter((node): node is Element => node.nodeType === 1).map((node) => ({ namespace: node.namespaceURI ?? '', name: node.localName, prefix: node.prefix ?? '', text: node.textContent }));
  return { faults, properties };
}

const identification = (file: PdfFile, name: string) => readXmp(file).properties.filter((property) => property.namespace === 'http://www.aiim.org/pdfa/ns/id/' && property.name === name);

const annotations = (file: PdfFile): PDFDict[] => file.doc.getPages().flatMap((page) => listAt(file, page.node, 'Annots')).filter((entry): entry is PDFDict => entry instanceof PDFDict);
const flagsOf = (file: PdfFile, dict: PDFDict): number | null => { const flags = at(file, dict, 'F'); return flags instanceof PDFNumber ? flags.asNumber() : null; };

/** Dictionaries that act: what hangs under A or OpenAction, and what names itself an action. */
function actions(file: PdfFile): PDFDict[] {
  const under = file.dicts.flatMap(({ dict }) => [at(file, dict, 'A'), at(file, dict, 'OpenAction'), at(file, dict, 'Next')]).filter((value: PDFObject | undefined): value is PDFDict => value instanceof PDFDict && value.keys().some((key) => key.decodeText() === 'S'));
  return [...under.filter((dict) => nameAt(file, dict, 'O') === undefined), ...dictsOfType(file, 'Action').map(({ dict }) => dict)];
}

const fileSpecs = (file: PdfFile) => dictsOfType(file, 'Filespec');
/** Objects that belong to the document or to a part of it: members of an AF list. */
const associated = (file: PdfFile): Set<string> => new Set(file.dicts.flatMap(({ dict }) => { const list = at(file, dict, 'AF'); return list === undefined || !('asArray' in list) ? [] : (list.asArray as () => PDFObject[]).call(list).map((entry) => entry.toString()); }));

/** Clauses 6.3 to 6.11: annotations, actions, metadata, what is attached, and what must not be there. */
export const DOCUMENT_RULES: readonly Rule[] = [
  { clause: '6.3.1', says: 'annotations are of the kinds that are allowed', faults: (file) => each(annotations(file), (dict) => ANNOTATIONS.has(nameAt(file, dict, 'Subtype') ?? ''), (dict) => nameAt(file, dict, 'Subtype') ?? 'none') },
  { clause: '6.3.2', says: 'annotations are printed, and not hidden', faults: (file) => each(annotations(file).filter((dict) => nameAt(file, dict, 'Subtype') !== 'Popup'), (dict) => { const flags = flagsOf(file, dict); return flags !== null && (flags & FLAG.print) !== 0 && (flags & (FLAG.invisible | FLAG.hidden | FLAG.noView | FLAG.toggleNoView)) === 0; }, (dict) => dict.toString()) },
  { clause: '6.3.3', says: 'annotations other than links have an appearance', faults: (file) => each(annotations(file).filter((dict) => !['Popup', 'Link'].includes(nameAt(file, dict, 'Subtype') ?? '')), (dict) => at(file, dict, 'AP') instanceof PDFDict, (dict) => dict.toString()) },
  { clause: '6.4', says: 'there are no forms to fill in', faults: (file) => whether(at(file, file.doc.catalog, 'AcroForm') === undefined && at(file, file.doc.catalog, 'NeedsRendering') !== PDFBool.True, 'AcroForm or NeedsRendering') },
  { clause: '6.5.1', says: 'actions do nothing but lead somewhere', faults: (file) => each(actions(file), (dict) => ACTIONS.has(nameAt(file, dict, 'S') ?? ''), (dict) => dict.toString()) },
  { clause: '6.5.2', says: 'neither the document nor a page acts by itself', faults: (file) => each([file.doc.catalog as PDFDict, ...file.doc.getPages().map((page) => page.node as PDFDict)], (dict) => at(file, dict, 'AA') === undefined, () => 'AA') },
  { clause: '6.6.2.1', says: 'there are metadata', faults: (file) => whether(xmpOf(file) !== '', 'none') },
  { clause: '6.6.2.1', says: 'their header states neither length nor encoding', faults: (file) => whether(!/<\?xpacket [^?]*\b(bytes|encoding)=/.test(xmpOf(file)), 'it does') },
  { clause: '6.6.2.1', says: 'they are well-formed', faults: (file) => readXmp(file).faults },
  { clause: '6.6.2.3', says: 'they state nothing but what is defined', faults: (file) => each(readXmp(file).properties, ({ namespace, name }) => XMP_PROPERTIES[namespace]?.includes(name) === true, ({ namespace, name }) => `${namespace}${name}`) },
  { clause: '6.6.4', says: 'they state the third part', faults: (file) => whether(identification(file, 'part').map(({ text }) => text).join() === '3', 'part') },
  { clause: '6.6.4', says: 'they state a level', faults: (file) => whether(/^[ABU]$/.test(identification(file, 'conformance').map(({ text }) => text).join()), 'conformance') },
  { clause: '6.6.4', says: 'both under the prefix that is laid down', faults: (file) => each([...identification(file, 'part'), ...identification(file, 'conformance')], ({ prefix }) => prefix === 'pdfaid', ({ prefix }) => prefix) },
  { clause: '6.8', says: 'an attached file states its media type and when it was changed', faults: (file) => each(streamsOf(file).filter(({ stream }) => nameAt(file, stream.dict, 'Type') === 'EmbeddedFile'), ({ stream }) => { const params = at(file, stream.dict, 'Params'); return /^[\w.+-]+\/[\w.+-]+$/.test(nameAt(file, stream.dict, 'Subtype') ?? '') && params instanceof PDFDict && at(file, params, 'ModDate') !== undefined; }, ({ ref }) => ref.toString()) },
  { clause: '6.8', says: 'it has a name in both forms', faults: (file) => each(fileSpecs(file), ({ dict }) => at(file, dict, 'F') !== undefined && at(file, dict, 'UF') !== undefined && at(file, dict, 'EF') instanceof PDFDict, ({ ref }) => ref.toString()) },
  { clause: '6.8', says: 'it states how it belongs to the document', faults: (file) => each(fileSpecs(file), ({ dict }) => RELATIONS.has(nameAt(file, dict, 'AFRelationship') ?? ''), ({ ref }) => ref.toString()) },
  { clause: '6.8', says: 'and the document, or a part of it, lists it', faults: (file) => { const listed = associated(file); return each(fileSpecs(file), ({ ref }) => listed.has(PDFRef.of(ref.objectNumber, ref.generationNumber).toString()), ({ ref }) => ref.toString()); } },
  { clause: '6.9', says: 'nothing can be switched off', faults: (file) => whether(at(file, file.doc.catalog, 'OCProperties') === undefined, 'OCProperties') },
  { clause: '6.10', says: 'there is no other way of showing it', faults: (file) => { const names = at(file, file.doc.catalog, 'Names'); return [...whether(!(names instanceof PDFDict) || at(file, names, 'AlternatePresentations') === undefined, 'AlternatePresentations'), ...each(file.doc.getPages(), (page) => at(file, page.node, 'PresSteps') === undefined, () => 'PresSteps')]; } },
  { clause: '6.11', says: 'nothing is asked of a reader', faults: (file) => whether(at(file, file.doc.catalog, 'Requirements') === undefined, 'Requirements') },
];
