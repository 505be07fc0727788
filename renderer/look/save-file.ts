/** Hands bytes or text to the person as a file, through the browser's own way of saving. */
export function saveFile(name: string, mediaType: string, content: Uint8Array | string | Blob): void {
  const blob = content instanceof Blob ? content : new Blob([content as BlobPart], { type: mediaType });
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => { URL.revokeObjectURL(url); }, 10_000);
}
