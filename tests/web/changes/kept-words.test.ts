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

it('work that moves under another name is told by both', () => {
  const move = {
    key: 'pile-turn/pile:p/turn:1',
    title: 'Turn the pile: it is running too hot',
    from: '2027-05-06',
    to: '2027-05-08',
    reasons: [],
    otherwise: { title: 'Turn the pile: it smells sour' },
  };
  expect(movesInWords([move], 'metric')).toBe(
    '1 task moves: Turn the pile: it is running too hot from 6 May 2027 to 8 May 2027, is now: Turn the pile: it smells sour.',
  );
});
