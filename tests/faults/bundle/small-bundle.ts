import { concludeAll } from '../../unit/main/services/conclude-all.ts';
import { openHouse } from '../../unit/main/services/work-house.ts';
import { bundleOf } from '../../unit/main/bundle/made-bundle.ts';

/** The bundle of one case with an issued report and a kept file. */
export async function smallBundle(): Promise<Uint8Array<ArrayBuffer>> {
  const house = await openHouse();
  try {
    const { caseId, stones } = await house.takeIn();
    await concludeAll(house, Object.values(stones));
    await house.done(house.colleague, 'reports.issue', { caseId });
    return await bundleOf(house);
  } finally {
    house.close();
  }
}
