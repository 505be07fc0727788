/** The number people read, write on bags and say on the telephone: C-2026-0001. Four digits or more. */
export const caseNumber = (year: number, running: number): string => `C-${year}-${String(running).padStart(4, '0')}`;
