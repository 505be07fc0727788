/** The zone of this machine, and every zone that can be chosen. */
export const HERE = Intl.DateTimeFormat().resolvedOptions().timeZone;
const known = Intl.supportedValuesOf('timeZone');
export const ZONES: readonly string[] = known.includes(HERE) ? known : [HERE, ...known];
