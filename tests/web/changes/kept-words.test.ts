import { expect, it } from 'vitest';
import { movesInWords } from '../../../src/web/changes/kept.tsx';

it('the same work under another key neither comes nor goes', () => {
  const title = 'Sow cereal rye in Bed 1';
  const moves = [
    { key: 'cover-sow/stand:a', title, from: '2027-09-20', reasons: [] },
    { key: 'cover-sow/stand:b', title, to: '2027-09-20', reasons: [] },
    { key: 'bed-clear/planting:garlic', title: 'Lift the garlic', from: '2027-07-10', reasons: [] },
  ];
  expect(movesInWords(moves, 'metric')).toBe('1 task goes off the plan: Lift the garlic.');
  const later = [moves[0], { key: 'cover-sow/stand:b', title, to: '2027-09-21', reasons: [] }].flatMap(
    (each) => each ?? [],
  );
  expect(movesInWords(later, 'metric')).toMatch(/^1 task is added: .* 1 task goes off the plan: /);
});
