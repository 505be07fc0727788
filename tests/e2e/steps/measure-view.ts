import type { Page } from 'playwright-core';

/** Things that a person could not see or reach at this size, each as a sentence; empty where all is well. */
export function clippedParts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const wide = document.documentElement;
    if (wide.scrollWidth > wide.clientWidth) found.push(`the page is ${wide.scrollWidth - wide.clientWidth} px wider than the window`);
    const named = (element: Element) => (element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40);
    // Parts that are meant to scroll sideways say so; no view here has one.
    for (const part of document.querySelectorAll('.view-body, .page, .bench-work, .bench-house, .intake-sheet, .intake-margin, .case-middle, .case-margin, .tree, .table-body, .dialog-body')) {
      if (part.scrollWidth > part.clientWidth + 1) found.push(`${part.className} scrolls sideways by ${part.scrollWidth - part.clientWidth} px`);
    }
    for (const table of document.querySelectorAll('.table')) {
      const heads = [...table.querySelectorAll('.table-head > span')].map((head) => head.getBoundingClientRect());
      const cells = [...(table.querySelector('.table-row')?.children ?? [])].map((cell) => cell.getBoundingClientRect());
      if (cells.some((cell, n) => Math.abs(cell.left - heads[n]!.left) > 1)) found.push(`the heads of “${table.getAttribute('aria-label')}” do not stand over their columns`);
    }
    for (const row of document.querySelectorAll('.segmented')) if (row.scrollWidth > row.clientWidth + 1) found.push(`“${row.getAttribute('aria-label')}” is cut`);
    for (const action of document.querySelectorAll('.view-head button, .view-head input, .dialog-head button, .dialog-foot button, .case-margin .button')) {
      const box = action.getBoundingClientRect();
      if (box.width === 0) found.push(`“${named(action)}” is not shown`);
      if (box.right > innerWidth + 0.5 || box.left < 0) found.push(`“${named(action)}” leaves the window at the side`);
      if (action.scrollWidth > action.clientWidth + 1) found.push(`“${named(action)}” is cut`);
    }
    for (const action of document.querySelectorAll('.view-head button, .dialog-head button, .dialog-foot button')) {
      const box = action.getBoundingClientRect();
      const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
      const veiled = document.querySelector('.dialog-veil, .palette-veil') !== null && action.closest('.dialog') === null;
      if (!veiled && (top === null || !(action.contains(top) || top.contains(action)))) found.push(`“${named(action)}” lies under something or outside`);
    }
    return found;
  });
}

/** Controls that a reader could only announce as "button" or "edit". */
export async function unnamedControls(page: Page): Promise<string[]> {
  const snapshot = await page.locator('body').ariaSnapshot();
  return snapshot.split('\n').filter((line) => /^\s*- (button|link|textbox|searchbox|combobox|checkbox|radio|spinbutton|radiogroup|dialog|alertdialog)\b(?! ")/.test(line)).map((line) => line.trim());
}
