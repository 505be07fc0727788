import type { Hazard } from './method.ts';

/** Stands first wherever a caution is shown. */
export const CAUTION_FIRST_LINE = 'This text is a reminder, not a hazard assessment. Local law, current standards, the maker’s instructions and a qualified person decide.';

export type Caution = {
  readonly title: string;
  readonly sentences: readonly string[];
  /** What the person at the bench confirms. */
  readonly acknowledge: string;
  /** Where the sentences come from. */
  readonly source: string;
};

/** What can hurt in a run, in the words shown before it is recorded. Nothing here declares an exposure or an eyewear safe. */
export const CAUTIONS: Readonly<Record<Hazard, Caution>> = {
  laser: {
    title: 'Laser light',
    sentences: [
      'Class 3B (above 5 mW and up to 500 mW where the beam is visible) hurts the eye directly and by mirror reflection; class 4 (above 500 mW) also by light scattered from a matt surface, and it burns skin and starts fires.',
      'An enclosed instrument may be class 1 as a product: with the cover open or the interlock bridged, the rules of the laser inside apply again.',
      '405 nm looks dim however strong it is. Brightness gives no warning, and the blink of an eye can’t be relied on.',
      'A polished stone is a mirror: beam stopped, nothing shiny in its way, no beam at the height of the eyes, eyewear for this wavelength and power when the cover is open.',
    ],
    acknowledge: 'The beam is enclosed, or everyone in reach wears eyewear for this laser',
    // Limits of the classes for continuous visible beams; the rules of use are from memory.
    source: 'IEC 60825-1 (classes), IEC TR 60825-14 and ANSI Z136.1 (use)',
  },
  ultraviolet: {
    title: 'Ultraviolet light',
    sentences: [
      'Short-wave light (254 nm) inflames eyes and skin after a minute or less close to a lamp, and is felt only hours later. Long-wave light (365 nm) is a hazard to the eye as well.',
      'Cabinet closed, or a face shield and gloves. Ordinary glass stops short-wave light but not long-wave light; a window pane is no shield against both.',
      'Some lamps make ozone. Medicines and an operated lens make some people more sensitive than any limit allows for.',
    ],
    acknowledge: 'The cabinet is closed, or eyes and skin are covered',
    // 30 J/m² effective (180–400 nm) and 10 000 J/m² UV-A in eight hours: 1 W/m² at 254 nm reaches the first in 60 s.
    source: 'ICNIRP 2004; Directive 2006/25/EC; weighting of IEC 62471',
  },
  cryogen: {
    title: 'Liquid nitrogen, cold parts',
    sentences: [
      'It burns skin and eyes on touch and wherever it is caught in cloth or gloves: face shield, loose dry gloves, closed shoes.',
      'The gas takes the air’s place without smell or warning: ventilated room, oxygen alarm, never alone, never in a lift with people.',
      'Nothing sealed: it bursts. Let the stone warm in dry gas, or water freezes on it; a sudden change of temperature can open a feather.',
    ],
    acknowledge: 'The room is ventilated, hands and face are covered, nothing is sealed',
    source: 'common practice, no source',
  },
};
