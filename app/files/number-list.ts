/** A growing list of numbers without the memory and the copying of a plain array of doubles. */
export type NumberList = { values: Float64Array; length: number };

export function numberList(capacity = 1024): NumberList {
  return { values: new Float64Array(Math.max(16, capacity)), length: 0 };
}

export function pushNumber(list: NumberList, value: number): void {
  if (list.length === list.values.length) {
    const larger = new Float64Array(list.values.length * 2);
    larger.set(list.values);
    list.values = larger;
  }
  list.values[list.length] = value;
  list.length += 1;
}

export function takeNumbers(list: NumberList): Float64Array {
  return list.values.slice(0, list.length);
}
