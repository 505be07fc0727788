export * from './house.ts';
export * from './cases.ts';
export * from './work.ts';
export * from './ledgers.ts';
export * from './calibrations.ts';
export * from './pieces.ts';
export * from './keys.ts';
export * from './lots.ts';
