import { expect, test } from 'vitest';
import { contract } from '../../../../app/contract/index.ts';
import { OFFERED } from '../../../../renderer/people/use-may.ts';

test.each(Object.entries(OFFERED))('the window offers %s to those whom the door lets do it', (operation, roles) => {
  expect([...roles].sort()).toEqual([...contract[operation as keyof typeof OFFERED].may].sort());
});
