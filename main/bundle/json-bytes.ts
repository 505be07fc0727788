/** A document as it stands in a bundle: UTF-8, two spaces, a line's end. */
export const jsonBytes = (content: unknown): Uint8Array<ArrayBuffer> => new TextEncoder().encode(`${JSON.stringify(content, null, 2)}\n`);
