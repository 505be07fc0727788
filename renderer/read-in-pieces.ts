/** After this long at a stretch, in ms, the window gets a turn: well below what an eye notices. */
const AT_A_STRETCH_MS = 12;

const aTurn = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });

/**
 * The whole body of an answer, taken up piece by piece as it arrives: `arrayBuffer()` joins a large one in a single task,
 * for which the window stands still.
 * @throws where the answer breaks off, or is longer or shorter than its head said
 */
export async function readInPieces(response: Response): Promise<Uint8Array<ArrayBuffer>> {
  const size = Number(response.headers.get('content-length') ?? NaN);
  if (response.body === null || !Number.isInteger(size)) return new Uint8Array(await response.arrayBuffer());
  const whole = new Uint8Array(size);
  const reader = response.body.getReader();
  let at = 0;
  let since = performance.now();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    whole.set(piece.value, at);
    at += piece.value.byteLength;
    if (performance.now() - since > AT_A_STRETCH_MS) {
      await aTurn();
      since = performance.now();
    }
  }
  if (at !== size) throw new RangeError(`${at} bytes came, ${size} were said`);
  return whole;
}
