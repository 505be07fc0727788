/** Width of a text in the unit of the line width. */
export type Measure = (text: string) => number;

const ELLIPSIS = '…';

/** Places where a line may end beside spaces: after hyphen, dash, slash, comma in a run without spaces. */
function splitWord(word: string): string[] {
  return word.match(/[^-–—/_,;]*[-–—/_,;]+|[^-–—/_,;]+/gu) ?? [word];
}

/** Cuts a word that is wider than a line, so that a digest or a name without spaces never leaves its column. */
function cutToWidth(word: string, width: number, measure: Measure): string[] {
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && measure(part + sign) > width) { parts.push(part); part = sign; } else part += sign;
  }
  if (part !== '') parts.push(part);
  return parts;
}

/** What a line break must not part from the number before it. */
const UNITS = /^(?:nm|cm|mm|m|ms|s|min|h|K|°C|ct|g|mg|kg|eV|ppm|ppb|%|kB|MB|counts|cts|cm⁻¹|(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*)[,.;:)]*$/u;
const ENDS_IN_MONTH = /\d (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*$/u;
const ENDS_IN_DIGIT = /\d$/u;

/** Words of a paragraph; a number stays with its unit and its uncertainty, a day with its month and year. */
function wordsOf(paragraph: string): string[] {
  const words: string[] = [];
  for (const word of paragraph.split(/ +/u)) {
    if (word === '') continue;
    const last = words.at(-1);
    const holds = last !== undefined && ((ENDS_IN_DIGIT.test(last) && UNITS.test(word)) || (ENDS_IN_MONTH.test(last) && /^\d{4}/u.test(word)) || word === '±' || last.endsWith(' ±') || last === '±');
    if (holds) words[words.length - 1] = `${last} ${word}`;
    else words.push(word);
  }
  return words;
}

function breakParagraph(paragraph: string, width: number, measure: Measure): string[] {
  const lines: string[] = [];
  let line = '';
  const push = (): void => { lines.push(line.trimEnd()); line = ''; };
  for (const word of wordsOf(paragraph)) {
    const spaced = line === '' ? word : `${line} ${word}`;
    if (measure(spaced) <= width) { line = spaced; continue; }
    if (line !== '' && measure(word) <= width) { push(); line = word; continue; }
    let glue = line === '' ? '' : ' ';
    for (const piece of splitWord(word).flatMap((p) => (measure(p) <= width ? [p] : cutToWidth(p, width, measure)))) {
      if (line !== '' && measure(`${line}${glue}${piece}`) > width) { push(); glue = ''; }
      line = `${line}${line === '' ? '' : glue}${piece}`;
      glue = '';
    }
  }
  push();
  return lines;
}

/** A cut inside a word goes back to the space before it, unless that would cost more than this share of the line. */
const KEEP_AT_LEAST = 0.7;

/** Shortens a line so that it ends in an ellipsis and still fits. */
export function withEllipsis(line: string, width: number, measure: Measure): string {
  const signs = Array.from(line);
  let cut = false;
  while (signs.length > 0 && measure(`${signs.join('').trimEnd()}${ELLIPSIS}`) > width) { signs.pop(); cut = true; }
  const kept = signs.join('');
  const space = kept.lastIndexOf(' ');
  const whole = cut && !line.startsWith(`${kept} `) && space > kept.length * KEEP_AT_LEAST ? kept.slice(0, space) : kept;
  return `${whole.trimEnd().replace(/[,;:–-]+$/u, '')}${ELLIPSIS}`;
}

/**
 * Breaks a text into lines no wider than width. Line feeds stay breaks; a word too wide for a line is cut between letters.
 * With atMost, what does not fit ends in an ellipsis. An empty text gives one empty line.
 */
export function breakLines(text: string, width: number, measure: Measure, atMost = Number.POSITIVE_INFINITY): string[] {
  const lines = text.split('\n').flatMap((paragraph) => breakParagraph(paragraph, width, measure));
  if (lines.length <= atMost) return lines;
  const kept = lines.slice(0, atMost);
  kept[atMost - 1] = withEllipsis(kept[atMost - 1] ?? '', width, measure);
  return kept;
}
