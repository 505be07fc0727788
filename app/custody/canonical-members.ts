const QUOTE = 0x22, BACKSLASH = 0x5c, COMMA = 0x2c, COLON = 0x3a, OPEN = 0x7b, CLOSE = 0x7d, LIST = 0x5b, LIST_END = 0x5d, MINUS = 0x2d, ZERO = 0x30, NINE = 0x39;
/** Digits of a whole number that is written the same in every way of counting: below 2^53. */
const SAFE_DIGITS = 15;
/** Deeper than anything the program writes; whoever nests further is looked at the long way. */
const DEPTH = 60;

/** Behind the closing quote of a string that begins at `at`, or -1 where it holds anything to escape or half a surrogate pair. */
function pastString(text: string, at: number): number {
  if (text.charCodeAt(at) !== QUOTE) return -1;
  for (let i = at + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) return i + 1;
    if (code < 0x20 || code === BACKSLASH || (code >= 0xd800 && code <= 0xdfff)) return -1;
  }
  return -1;
}

/** Behind a whole number that is written as RFC 8785 writes it, or -1 where it is none or has another form. */
function pastNumber(text: string, at: number): number {
  const start = text.charCodeAt(at) === MINUS ? at + 1 : at;
  let i = start;
  while (i < text.length && text.charCodeAt(i) >= ZERO && text.charCodeAt(i) <= NINE) i++;
  const digits = i - start;
  if (digits === 0 || digits > SAFE_DIGITS) return -1;
  if (text.charCodeAt(start) === ZERO && (digits > 1 || start !== at)) return -1;
  return i;
}

function pastList(text: string, at: number, depth: number): number {
  if (text.charCodeAt(at + 1) === LIST_END) return at + 2;
  for (let i = at + 1; ;) {
    i = pastValue(text, i, depth);
    if (i < 0) return -1;
    const next = text.charCodeAt(i);
    if (next === LIST_END) return i + 1;
    if (next !== COMMA) return -1;
    i += 1;
  }
}

/** Names rise strictly by their UTF-16 code units, as RFC 8785, 3.2.3 asks, which leaves no room for one that stands twice. */
function pastObject(text: string, at: number, depth: number, spans: number[] | null): number {
  if (text.charCodeAt(at + 1) === CLOSE) return at + 2;
  let before: string | null = null;
  for (let i = at + 1; ;) {
    const behind = pastString(text, i);
    if (behind < 0 || text.charCodeAt(behind) !== COLON) return -1;
    const name = text.slice(i + 1, behind - 1);
    if (before !== null && before >= name) return -1;
    before = name;
    const end = pastValue(text, behind + 1, depth);
    if (end < 0) return -1;
    spans?.push(i + 1, behind - 1, end);
    const next = text.charCodeAt(end);
    if (next === CLOSE) return end + 1;
    if (next !== COMMA) return -1;
    i = end + 1;
  }
}

function pastValue(text: string, at: number, depth: number): number {
  const code = text.charCodeAt(at);
  if (code === QUOTE) return pastString(text, at);
  if (code === OPEN) return depth === 0 ? -1 : pastObject(text, at, depth - 1, null);
  if (code === LIST) return depth === 0 ? -1 : pastList(text, at, depth - 1);
  if (code === MINUS || (code >= ZERO && code <= NINE)) return pastNumber(text, at);
  for (const word of WORDS) if (text.startsWith(word, at)) return at + word.length;
  return -1;
}
const WORDS = ['null', 'true', 'false'];

/**
 * Members of an object, where its text can be seen to be in RFC 8785 form without reading it into values: strings without escapes,
 * whole numbers, names in order, no spaces. Of each, in turn: where its name begins and ends, and where its value ends, which begins two
 * places behind the name. They are put into `spans`, which is emptied first.
 * False where that can't be seen so; the text may then still be canonical.
 */
export function canonicalMembers(text: string, spans: number[]): boolean {
  spans.length = 0;
  return text.charCodeAt(0) === OPEN && pastObject(text, 0, DEPTH, spans) === text.length;
}

/**
 * Names and strings of an object of strings, in turn, from its text between `start` and `end`, which `canonicalMembers` has seen.
 * Null where it holds anything else.
 */
export function stringsOf(text: string, start: number, end: number): string[] | null {
  if (text.charCodeAt(start) !== OPEN) return null;
  const found: string[] = [];
  // Behind every string stands a colon or a comma, and nothing is escaped.
  for (let i = start + 1; i < end - 1;) {
    if (text.charCodeAt(i) !== QUOTE) return null;
    const close = text.indexOf('"', i + 1);
    found.push(text.slice(i + 1, close));
    i = close + 2;
  }
  return found;
}
