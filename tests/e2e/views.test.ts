import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { takeView, type Theme } from './harness/take-view.ts';
import { beginCasebook } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { fillCasebook, type FilledCasebook } from './steps/fill-casebook.ts';
import { longestDraft } from './steps/hand-overs.ts';
import { lookAt, visit } from './steps/look-at.ts';
import { clippedParts } from './steps/measure-view.ts';

describe.each(availableHosts())('every view in %s', (host) => {
  let culet: OpenCulet;
  let filled: FilledCasebook;
  beforeAll(async () => { culet = await openCulet({ host }); });
  afterAll(async () => { await culet.close(); });

  const heading = (name: string) => culet.page.getByRole('heading', { level: 1, name });
  const look = (name: string, ...themes: Theme[]) => lookAt(culet, name, themes);
  const goTo = (address: string, shown: string) => visit(culet, address, shown);
  const chooseItem = (name: RegExp) => culet.page.getByRole('navigation', { name: 'This case' }).getByRole('button', { name }).click();
  const press = (name: string) => culet.page.getByRole('button', { name, exact: true }).click();

  test('before there is a casebook', async () => {
    await culet.page.getByRole('button', { name: 'Start my own' }).waitFor();
    await look('start');
    await press('Start my own');
    await press('Start the casebook');
    await culet.page.getByText('Write the laboratory’s name as it stands on its reports.').waitFor();
    await look('start-own');
  });

  test('in a casebook that has just begun', async () => {
    await beginCasebook(culet);
    await heading('Bench').waitFor();
    await look('bench-empty');
    for (const list of ['Cases', 'Stones', 'Reports', 'Instruments', 'Ledgers']) {
      await goTo(`#/${list.toLowerCase()}`, list);
      await look(`${list.toLowerCase()}-empty`);
    }
    await goTo('#/intake', 'Take in a case');
    await look('intake-empty');
    await press('Take it in');
    await culet.page.getByText('Before it can be taken in').waitFor();
    await look('intake-errors');
    await culet.page.getByRole('button', { name: 'Clear' }).waitFor({ state: 'detached' });
  });

  test('with every field as long as the house takes it', async () => {
    filled = await fillCasebook(culet);
    for (const list of ['Bench', 'Cases', 'Instruments', 'House']) {
      await goTo(`#/${list.toLowerCase()}`, list);
      await look(`${list.toLowerCase()}-longest`, 'light');
    }
    await goTo(`#/case/${filled.longest}`, 'Quillfeather');
    await look('case-longest', 'light');
    await chooseItem(/^A jewellery/);
    await look('case-longest-item', 'light');
    await callDoor(culet, 'drafts.put', { key: 'intake', content: longestDraft() });
    await goTo('#/intake', 'Take in a case');
    await press('Take it in');
    await culet.page.locator('.intake-sheet').getByText(/is not a weight in carat/).waitFor();
    await look('intake-longest', 'light');
  });

  test('a case', async () => {
    await goTo(`#/case/${filled.usual}`, 'Marrow Lane Jewellers');
    await look('case');
    await chooseItem(/^A loose/);
    await culet.page.getByRole('table', { name: 'Stones of A' }).waitFor();
    await look('case-item');
    await culet.page.getByRole('radio', { name: 'custody' }).click();
    await culet.page.getByRole('table', { name: 'Custody' }).waitFor();
    await look('case-custody');
    await press('Weigh');
    await culet.page.getByRole('dialog').waitFor();
    await look('case-weigh');
    await culet.page.keyboard.press('Escape');
    await culet.page.getByRole('radio', { name: /^photographs/ }).click();
    await culet.page.locator('.photograph-small').first().waitFor();
    await look('case-photographs');
  });

  test('the sheets that lie over the others', async () => {
    await goTo('#/bench', 'Bench');
    await culet.page.keyboard.press('Control+k');
    await culet.page.keyboard.type('marrow');
    await culet.page.getByRole('option', { name: /case$/ }).first().waitFor();
    await look('palette');
    await culet.page.keyboard.press('Escape');
    await culet.page.getByRole('button', { name: /Ilse Marden/ }).click();
    await culet.page.getByRole('dialog', { name: 'Who works at this window?' }).waitFor();
    await look('who-works');
    await culet.page.keyboard.press('Escape');
    await goTo('#/instruments', 'Instruments');
    await press('Add an instrument');
    await culet.page.getByRole('dialog', { name: 'A new instrument' }).waitFor();
    await look('instrument-form');
    await culet.page.keyboard.press('Escape');
  });

  test('said nothing wrong on the way', () => {
    expect(culet.problems()).toEqual([]);
    expect(culet.strangers()).toEqual([]);
  });
});

describe.each(availableHosts())('a damaged casebook in %s', (host) => {
  test('is told of in words', async () => {
    const dataDir = mkdtempSync(join(tmpdir(), 'culet-damaged-'));
    writeFileSync(join(dataDir, 'Casebook.culet'), 'this was a casebook once');
    const culet = await openCulet({ host, dataDir });
    try {
      await culet.page.getByRole('heading', { name: 'The casebook can’t be opened' }).waitFor();
      await takeView(culet, 'unusable');
      expect(await clippedParts(culet.page)).toEqual([]);
    } finally {
      await culet.close();
      rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
    }
  });
});

// In Electron the driver can't keep a part of the program's own scheme away; the window is the same.
describe.runIf(availableHosts().includes('loopback'))('a part of the window that can’t be fetched', () => {
  test('is told of in its place, the rooms stay, and loading anew brings it back', async () => {
    const culet = await openCulet({ host: 'loopback' });
    const { page } = culet;
    try {
      await beginCasebook(culet);
      await page.route(/history-view-.*\.js$/, (route) => route.abort());
      await visit(culet, '#/history', 'This page can’t be shown');
      await page.getByRole('alert').getByText('Something went wrong while the window drew it').waitFor();
      await lookAt(culet, 'fallen-view');
      await page.getByRole('link', { name: /^Cases/ }).click();
      await page.getByRole('heading', { level: 1, name: 'Cases' }).waitFor();
      await page.unroute(/history-view-.*\.js$/);
      await visit(culet, '#/history', 'This page can’t be shown');
      await page.getByRole('button', { name: 'Load the window anew' }).click();
      await page.getByRole('heading', { level: 1, name: 'History' }).waitFor();
    } finally {
      await culet.close();
    }
  });
});
