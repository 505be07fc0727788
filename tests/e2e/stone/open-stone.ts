import type { OpenCulet } from '../harness/launch.ts';

/** Goes to a stone's page and waits until it is there. */
export async function openStone({ page }: Pick<OpenCulet, 'page'>, stoneId: string, label: string): Promise<void> {
  await page.evaluate((id) => { window.location.hash = `#/stone/${id}`; }, stoneId);
  await page.getByRole('heading', { level: 1, name: `Stone ${label}` }).waitFor();
}
