import { useEffect } from 'react';

const WRONG = '[data-invalid] input, [data-invalid] textarea, [aria-invalid="true"]';

/**
 * After a refusal the first field that is wrong gets the cursor.
 * @param within selector of the form or sheet
 * @param own what the window itself found, a new value at each try
 * @param refusal what came back through the door
 */
export function useFocusWrong(within: string, own: unknown, refusal: unknown = null): void {
  useEffect(() => {
    if (!own && !refusal) return undefined;
    const frame = requestAnimationFrame(() => { document.querySelector(within)?.querySelector<HTMLElement>(WRONG)?.focus(); });
    return () => { cancelAnimationFrame(frame); };
  }, [within, own, refusal]);
}
