import type { Page } from 'playwright-core';

const MOST_TABS = 60;

/** The name by which a reader announces the element that has the focus. */
export function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return '';
    const by = element.getAttribute('aria-labelledby')?.split(/\s+/).map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
    const label = (element as HTMLInputElement).labels?.[0]?.textContent;
    return (element.getAttribute('aria-label') ?? by ?? label ?? element.textContent ?? '').trim();
  });
}

/**
 * Presses Tab until the element of that name has the focus; what lies before it is passed over, nothing is pointed at.
 * @returns how many times it was pressed
 * @throws when it is not reached
 */
export async function tabTo(page: Page, name: string | RegExp): Promise<number> {
  const passed: string[] = [];
  for (let presses = 0; presses <= MOST_TABS; presses += 1) {
    const here = await focusedName(page);
    if (typeof name === 'string' ? here === name : name.test(here)) return presses;
    passed.push(here);
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab did not reach ${String(name)}; it passed ${passed.join(' | ')}`);
}

/** Reaches the field of that name with Tab and types into it. */
export async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.type(text);
}
