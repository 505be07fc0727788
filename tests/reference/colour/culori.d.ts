/** The part of culori that the checks use; the package brings no types. */
declare module 'culori' {
  type Colour = { readonly mode: string; readonly [channel: string]: number | string };
  export function parse(text: string): Colour | undefined;
  export function converter(mode: 'lab65'): (colour: Colour) => { readonly l: number; readonly a: number; readonly b: number };
  export function converter(mode: 'xyz65'): (colour: Colour) => { readonly x: number; readonly y: number; readonly z: number };
  export function differenceCiede2000(): (a: Colour, b: Colour) => number;
}
