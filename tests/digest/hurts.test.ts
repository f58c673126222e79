import { expect, test } from 'vitest';
import { canHurt } from '../../src/digest/hurts.ts';
import { demoPlan } from '../demo-data/demo-plan.ts';

test.each([
  'Blades: cut away from yourself, gloves on.',
  'A full barrow weighs about ⟦49 kg⟧: fill it to what you can push, and bend your knees.',
  'A working pile can be scalding inside and steams when opened.',
  'Spread oily rags out flat to dry: in a heap they can catch fire by themselves.',
  'People with G6PD deficiency can fall gravely ill from the beans and even from the pollen (favism).',
  'The leaf blades are poisonous: eat the stalks only.',
  'Before you drive a stake, ask where cables, pipes and drains lie.',
  'Frosted or drought-stunted leaves hold prussic acid: never feed them to animals.',
])('stands with its work: %s', (caution) => {
  expect(canHurt(caution)).toBe(true);
});

// What a year of the demo garden warns of and the list leaves to the task's page. A caution that turns up here and is about
// somebody's skin has to be told by the list.
const ABOUT_THE_CROP_ALONE = [
  'A mild winter may leave it alive: look in late winter whether it is dead before counting on a free bed.',
  'After a short late-summer growth expect the low end of its nitrogen.',
  'Bare of snow it may die below ⟦-15 tempC⟧; seed raised in the north is hardier.',
  'Buy no garlic from ground with white rot, and plant none from a shop: both can close a bed to onions for good.',
  'Cut before it flowers it sprouts again unless cut very low or covered.',
  'Cut late, once the heads are out, the residue ties up to ⟦5.6 gPerM2⟧ of nitrogen for the next crop.',
  'Four weeks between cutting and sowing is the safest wait; two is the shortest for plants.',
  'Fresh residue checks small seedlings: keep to the wait, or pull it aside from the seed row.',
  'In soil above ⟦27 tempC⟧ the seed goes to sleep: sow in the shade or wait.',
  'It dislikes wet or hard ground; a freeze ends it.',
  'It grows again from the crown when cut before it flowers: look again and cut or cover it.',
  'It shares root rots with peas and beans: leave the same gap.',
  'Keep diseased leaves and fruit out of the compost; bag them or follow local rules.',
  'Leave out black walnut: its juglone harms tomatoes and others.',
  'Look in late winter whether it is dead before counting on a free bed.',
  'Never let the grain fill: dropped seed comes up in the vegetables.',
  'Never let the stand set seed: hard seed lies in the ground and comes up for years.',
  'No meat, fish, fat, dairy or bones.',
  'Once confirmed dead over winter it needs no wait at all.',
  'Rake the seed well in: seed left on the surface sprouts badly.',
  'Set it out only once nights stay above ⟦10 tempC⟧: cold checks it long before frost does.',
  'Sown more than eight weeks before the first freeze it may head in autumn.',
  'Stay off wet beds, with boots and with tools: soil worked wet sets hard and stays so all season.',
  'Ten days after the first flowers its seed is viable and it comes up in the next crop.',
  'The vines wind round tools: cut them in short lengths.',
  'They mat when wet: shred them or mix them with something coarse.',
];

test('what the demo garden warns of and the list leaves out is about the crop alone', async () => {
  const plans = await Promise.all(['2027-01-15', '2027-10-05'].map(demoPlan));
  const cautions = new Set(plans.flatMap(({ tasks }) => tasks.flatMap((task) => task.cautions)));
  expect(cautions.size).toBeGreaterThan(30);
  const leftOut = [...cautions].filter((caution) => !canHurt(caution));
  expect(leftOut.filter((caution) => !ABOUT_THE_CROP_ALONE.includes(caution))).toEqual([]);
}, 60_000);
