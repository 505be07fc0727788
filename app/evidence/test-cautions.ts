import type { MethodId } from '../domain/method.ts';

/** What each test needs so that its result can be relied on, in a clause beside its name. Sources stand with the evidence table; the rest is common practice, no source. */
export const TEST_CAUTIONS: Readonly<Record<MethodId, string>> = {
  raman: 'one stone alone in the beam; a line of a neighbour or of the mount counts for nothing',
  photoluminescence: 'cool the stone where you can, measure the laser by the diamond line, look at table and pavilion',
  absorption: 'needs a clear path through the stone; lines of a colourless stone are weak',
  infrared: 'clean the stone: grease lies beside boron; keep below saturation',
  'ultraviolet-transmission': 'screening only; light past the stone reads as transparent',
  'fluorescence-long-wave': 'long-wave before short-wave, in the dark, neighbours covered',
  'fluorescence-short-wave': 'after long-wave; the same scale of strength; watch for an after-glow at once',
  phosphorescence: 'eyes used to the dark, seconds counted; 254 nm excites it weakly, and irradiated stones have none',
  'growth-pattern': 'look at several facets, table and pavilion: a layer can hide behind the pattern of its core',
  'crossed-polarisers': 'several directions, immersed where you can; reflections of facets are not strain',
  microscopy: 'a dark inclusion is metal only where it reflects as metal; name crystals by Raman',
  magnet: 'float or hang the stone; steel of tweezers sticks to the magnet',
  'thermal-probe': 'keep the tip off the metal; moissanite can pass',
  'electrical-conductivity': 'keep off the metal; neither answer excludes moissanite',
  'specific-gravity': 'above 0.2 ct, water without bubbles, its temperature written down',
  'refractive-index': 'a clean flat facet; diamond is above the scale of a refractometer, and so are most imitations',
};
