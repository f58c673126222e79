/**
 * Every form of a garden, sent with the ids of another garden of the household.
 */
import { expect, test } from 'vitest';
import { crossForms, formsWithIds } from '../fuzz/crossed.ts';
import { sharedHousehold } from '../fuzz/household.ts';
import { sharedWays } from '../fuzz/ways-in.ts';

test('no form of a garden changes anything of another, though sent with its ids', async () => {
  const laid = await sharedHousehold();
  const forms = await formsWithIds(laid, (await sharedWays()).forms);
  console.log(`${forms.length} forms that name something of their garden`);
  expect(forms.length).toBeGreaterThan(30);
  expect((await crossForms(laid, forms)).wrong).toEqual([]);
}, 900_000);
