/** Letters and digits of five by seven points, drawn for the pictures of the demonstration; only those they need. */
const GLYPHS: Readonly<Record<string, readonly string[]>> = {
  I: ['.###.', '..#..', '..#..', '..#..', '..#..', '..#..', '.###.'],
  N: ['#...#', '##..#', '##..#', '#.#.#', '#..##', '#..##', '#...#'],
  V: ['#...#', '#...#', '#...#', '#...#', '.#.#.', '.#.#.', '..#..'],
  E: ['#####', '#....', '#....', '####.', '#....', '#....', '#####'],
  T: ['#####', '..#..', '..#..', '..#..', '..#..', '..#..', '..#..'],
  D: ['####.', '#...#', '#...#', '#...#', '#...#', '#...#', '####.'],
  0: ['.###.', '#...#', '#...#', '#...#', '#...#', '#...#', '.###.'],
  1: ['..#..', '.##..', '..#..', '..#..', '..#..', '..#..', '.###.'],
  2: ['.###.', '#...#', '....#', '...#.', '..#..', '.#...', '#####'],
  3: ['####.', '....#', '....#', '.###.', '....#', '....#', '####.'],
  4: ['#..#.', '#..#.', '#..#.', '#####', '...#.', '...#.', '...#.'],
  5: ['#####', '#....', '####.', '....#', '....#', '#...#', '.###.'],
  6: ['.###.', '#....', '#....', '####.', '#...#', '#...#', '.###.'],
  7: ['#####', '....#', '...#.', '...#.', '..#..', '..#..', '..#..'],
  8: ['.###.', '#...#', '#...#', '.###.', '#...#', '#...#', '.###.'],
  9: ['.###.', '#...#', '#...#', '.####', '....#', '....#', '.###.'],
};
const ADVANCE = 6;
const HEIGHT = 7;

/** Size of a word in points, at scale 1. */
export const wordSize = (word: string): { readonly width: number; readonly height: number } => ({ width: word.length * ADVANCE - 1, height: HEIGHT });

/** Calls `paint` for every point of a word, from its top left corner. Letters without a glyph leave a gap. */
export function eachPoint(word: string, paint: (x: number, y: number) => void): void {
  [...word].forEach((letter, place) => {
    GLYPHS[letter]?.forEach((line, y) => {
      [...line].forEach((dot, x) => { if (dot === '#') paint(place * ADVANCE + x, y); });
    });
  });
}
