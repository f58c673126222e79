import { describe, expect, it } from 'vitest';
import { vegetables } from '../../../src/handbook/vegetables.ts';
import { soilForPlants, soilForSowing } from '../../../src/practices/planting/soil-steps.ts';
import { bed, draft, draftsIn, frostDates, garden, setOut, sown } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const steps = (cropId: string, day: string) =>
  draft(draftsIn(garden({ plantings: [sown(cropId, day)] }), climate), 'sow/').steps.join(' ');
const plants = (cropId: string, day: string) =>
  draft(draftsIn(garden({ plantings: [setOut(cropId, day)] }), climate), 'set-out/').steps.join(' ');

describe('the soil is opened no more than it must be', () => {
  it('for fine seed by a drawn drill', () => {
    expect(steps('lettuce-leaf', '2027-05-01')).toContain('Draw a shallow drill along each line');
  });

  it('for carrots with a fork along the row where it is packed, and for lettuce with none', () => {
    expect(steps('carrot', '2027-05-01')).toContain('push a fork in along the row and rock it until it cracks');
    expect(steps('lettuce-leaf', '2027-05-01')).not.toContain('fork');
  });

  it('for beans and corn by a hole for each seed', () => {
    for (const crop of ['snap-bean', 'sweet-corn'])
      expect(steps(crop, '2027-06-01'), crop).toContain('Make a hole for each seed with a finger or a dibber');
  });

  it('for cloves, sets and tubers each in its own way, without a trench', () => {
    expect(steps('garlic', '2027-10-20')).toContain('Make a hole for each with a dibber or a finger');
    expect(steps('onion-sets', '2027-04-15')).toContain('with its tip just showing');
    expect(steps('potato', '2027-05-01')).toContain('eyes up, and close it by hand; dig no trench');
  });

  it('for plants by a hole as wide as their roots, and for vines through parted mulch', () => {
    expect(plants('cabbage', '2027-05-05')).toContain('open a hole for each with a trowel, as wide as its roots');
    expect(plants('cabbage', '2027-05-05')).not.toContain('part it only for the hole');
    expect(plants('cucumber', '2027-06-10')).toContain('Where mulch lies, part it only for the hole');
  });

  it('for no crop of the handbook by digging or turning', () => {
    for (const crop of vegetables) {
      const at = { planting: sown(crop.id, '2027-05-01'), bed: bed('a'), crop, name: crop.name, spans: [] };
      const words = [...soilForSowing(at), ...soilForPlants(at)].join(' ');
      const plain = words.replace(/No digging over|dig no trench|turn nothing/g, '');
      expect(plain, crop.id).not.toMatch(/\b(dig|digging|turn|till|spade)\b/i);
    }
  });
});
