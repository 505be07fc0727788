/** The same bytes in a buffer of this thread: the contract does not let shared memory cross the door. */
export const ownedBytes = (bytes: Uint8Array): Uint8Array<ArrayBuffer> =>
  bytes.buffer instanceof ArrayBuffer ? bytes as Uint8Array<ArrayBuffer> : new Uint8Array(bytes);

export const ownedFloats = (values: Float64Array): Float64Array<ArrayBuffer> =>
  values.buffer instanceof ArrayBuffer ? values as Float64Array<ArrayBuffer> : new Float64Array(values);
