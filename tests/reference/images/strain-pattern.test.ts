import { describe, expect, test } from 'vitest';
import { encodeSrgb } from '../../../app/colour/srgb.ts';
import type { Photograph } from '../../../app/images/photograph.ts';
import { photographStrain } from '../../../app/images/simulate/retardation.ts';
import { readStrain, type StrainPattern } from '../../../app/images/strain-pattern.ts';
import { seededRandom } from '../../../app/spectra/simulate/seeded-random.ts';

const SIDE = 240;
const disc = { x: (SIDE - 1) / 2, y: (SIDE - 1) / 2, radius: SIDE / 2 };

function read(photograph: Photograph): StrainPattern {
  const pattern = readStrain(photograph, disc);
  if (pattern === null) throw new Error('nothing read');
  return pattern;
}

/** Light at each point, x to the right and y upwards, 0 to 1 across the stone. */
function photographOf(light: (x: number, y: number) => number): Photograph {
  const data = new Uint8Array(3 * SIDE * SIDE);
  for (let j = 0; j < SIDE; j++) for (let i = 0; i < SIDE; i++) data.fill(Math.round(255 * encodeSrgb(Math.max(0, Math.min(1, light(i / SIDE, 1 - j / SIDE))))), 3 * (j * SIDE + i), 3 * (j * SIDE + i) + 3);
  return { width: SIDE, height: SIDE, most: 255, data };
}

/** Smallest angle between two directions that have no sense, degrees. */
const between = (a: number, b: number): number => Math.min((((a - b) % 180) + 180) % 180, (((b - a) % 180) + 180) % 180);

// A grating's direction is known by construction; the structure tensor must give it back (J. Bigün & G. Granlund, ICCV 1987).
describe('gratings of known direction', () => {
  test.each([0, 15, 30, 45, 60, 90, 120, 135, 165])('bands at %i° are found within a degree', (degrees) => {
    const turn = degrees * Math.PI / 180;
    const pattern = read(photographOf((x, y) => 0.3 + 0.25 * Math.sin(2 * Math.PI * 9 * (x * Math.sin(turn) - y * Math.cos(turn)))));
    expect(pattern.indication).toBe('directional');
    expect(pattern.coherence).toBeGreaterThan(0.95);
    expect(between(pattern.directionDegrees!, degrees)).toBeLessThan(1);
  });

  test('noise lowers the coherence and keeps the direction within three degrees', () => {
    const random = seededRandom(5);
    const pattern = read(photographOf((x, y) => 0.3 + 0.2 * Math.sin(2 * Math.PI * 6 * (0.5 * x - Math.sqrt(0.75) * y)) + 0.05 * random.normal()));
    expect(pattern.indication).toBe('directional');
    expect(between(pattern.directionDegrees!, 30)).toBeLessThan(3);
  });

  test('two gratings across one another have no direction', () => {
    const pattern = read(photographOf((x, y) => 0.3 + 0.12 * Math.sin(2 * Math.PI * 9 * x) + 0.12 * Math.sin(2 * Math.PI * 9 * y)));
    expect(pattern).toMatchObject({ indication: 'mottled', directionDegrees: null });
    expect(pattern.coherence).toBeLessThan(0.1);
  });
});

// Photographs made with I(λ) = sin²(2θ)·sin²(πΓ/λ) (Born & Wolf, Principles of Optics, 15.4), first-order retardations.
describe('simulated strain', () => {
  test('bands of retardation along 40° are directional, along 40°', () => {
    const turn = 40 * Math.PI / 180;
    const pattern = read(photographStrain((x, y) => ({ retardation: 160 + 120 * Math.sin(14 * (x * Math.sin(turn) - y * Math.cos(turn))), angleDegrees: 45 }), SIDE));
    expect(pattern.indication).toBe('directional');
    expect(between(pattern.directionDegrees!, 40)).toBeLessThan(2);
    expect(pattern.confidence).toBeGreaterThan(0.5);
  });

  test('patches of strain in all directions are mottled', () => {
    const random = seededRandom(3);
    const patches = Array.from({ length: 60 }, () => ({ x: random.between(-1, 1), y: random.between(-1, 1), r: random.between(0.1, 0.22), a: random.between(60, 220) }));
    const pattern = read(photographStrain((x, y) => ({ retardation: patches.reduce((sum, p) => sum + p.a * Math.exp(-((x - p.x) ** 2 + (y - p.y) ** 2) / p.r ** 2), 0), angleDegrees: 45 }), SIDE));
    expect(pattern.indication).toBe('mottled');
  });

  test.each([0, 25])('a stone with an even %i nm shows nearly none', (retardation) => {
    expect(read(photographStrain(() => ({ retardation, angleDegrees: 45 }), SIDE)).indication).toBe('nearly-none');
  });

  test('a strained stone whose axes lie along the polarisers is dark: nearly none', () => {
    expect(read(photographStrain((x) => ({ retardation: 200 + 80 * Math.sin(9 * x), angleDegrees: 1 }), SIDE)).indication).toBe('nearly-none');
  });
});
