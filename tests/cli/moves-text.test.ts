import { expect, test } from 'vitest';
import { moveLines } from '../../src/cli/text/moves-text.ts';

test('what moves is told with days and amounts, each once', () => {
  const amounts = [{ what: 'compost', from: { value: 60, unit: 'L' }, to: { value: 80, unit: 'L' } }] as const;
  const moves = [
    { key: 'a', title: 'Topdress', from: '2027-04-20', to: '2027-04-20', amounts, reasons: [] },
    { key: 'b', title: 'Turn', from: '2027-04-20', to: '2027-04-20', reasons: [] },
    { key: 'c', title: 'Sow', from: '2027-04-20', to: '2027-04-22', amounts, reasons: [] },
  ];
  expect(moveLines('What would move:', moves, 'metric')).toEqual([
    '',
    'What would move:',
    '  Topdress: stays on 20 April 2027; compost 80 L instead of 60 L',
    '  Turn: open again on 20 April 2027',
    '  Sow: from 20 April 2027 to 22 April 2027; compost 80 L instead of 60 L',
  ]);
});
