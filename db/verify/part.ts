import type { Verification } from '../../app/contract/casebook.ts';

export type Part = Verification['parts'][number];

/** How checking goes on without holding up the window: told how many more were looked at, between slices; throws VerifyCancelled where it was stopped. */
export type Pace = (more: number) => Promise<void>;

/** Checking was stopped before it was finished. */
export class VerifyCancelled extends Error {}

export const soundPart = (part: Part['part'], checked: number, head: string | null = null): Part => ({ part, checked, sound: true, fault: null, head });
export const faultyPart = (part: Part['part'], checked: number, fault: string, head: string | null = null): Part => ({ part, checked, sound: false, fault, head });
