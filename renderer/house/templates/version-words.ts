/** Version 0 is the one that comes with the program. */
export const versionWords = (version: number): string => (version === 0 ? 'the version it came with' : `version ${version}`);
