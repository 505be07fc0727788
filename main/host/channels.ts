/** The two channels between preload and main; there are no others. */
export const CALL_CHANNEL = 'culet:call';
export const EVENT_CHANNEL = 'culet:event';
