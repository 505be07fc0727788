import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import { openCulet, type OpenCulet } from './harness/launch.ts';
import { makeHouse } from './stone/make-house.ts';

describe.each(availableHosts())('protocols in %s', (host) => {
  let culet: OpenCulet;
  let stoneId = '';
  beforeAll(async () => {
    culet = await openCulet({ host });
    stoneId = (await makeHouse(culet)).stones['A-1']!;
    await culet.page.reload();
  });
  afterAll(async () => {
    expect(culet.problems()).toEqual([]);
    await culet.close();
  });

  const tests = () => culet.page.getByRole('region', { name: /^Tests of/ });
  const stone = async () => {
    await culet.page.evaluate((id) => { window.location.hash = `#/stone/${id}`; }, stoneId);
    await tests().waitFor();
  };

  test('the stone’s page says what its protocol asks for, and what is next', async () => {
    await stone();
    await tests().getByText('Protocol: loose colourless').waitFor();
    expect(await tests().getByRole('button').filter({ hasText: 'next' }).allInnerTexts()).toHaveLength(1);
  });

  test('the house changes the order; the stone follows', async () => {
    await culet.page.evaluate(() => { window.location.hash = '#/house'; });
    const form = culet.page.getByRole('region', { name: 'Protocols' });
    await form.getByRole('button', { name: 'Microscopy earlier' }).click();
    await form.getByLabel('Name', { exact: true }).fill('ours');
    await form.getByRole('button', { name: 'Leave Infrared out' }).click();
    await form.getByRole('button', { name: 'Keep the protocols' }).click();
    await culet.page.getByText('Protocols kept.').waitFor();
    await stone();
    await tests().getByText('Protocol: ours').waitFor();
    expect((await tests().getByRole('button').first().innerText()).replace(/\s+/g, ' ')).toBe('Microscopy next');
  });

  test('short-wave before long-wave is refused in a sentence', async () => {
    await culet.page.evaluate(() => { window.location.hash = '#/house'; });
    const form = culet.page.getByRole('region', { name: 'Protocols' });
    await form.getByRole('button', { name: 'Fluorescence, long-wave ultraviolet later' }).click();
    await form.getByRole('button', { name: 'Keep the protocols' }).click();
    expect(await form.getByRole('alert').innerText()).toContain('Long-wave fluorescence belongs before short-wave');
  });
});
