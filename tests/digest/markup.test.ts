import { expect, test } from 'vitest';
import { html } from '../../src/digest/markup.ts';

test('what is put into markup cannot become markup', () => {
  const name = `<b>Ann's & "Bo"</b>`;
  expect(html`<p title="${name}">${name}</p>`.text).toBe(
    '<p title="&lt;b&gt;Ann&#39;s &amp; &quot;Bo&quot;&lt;/b&gt;">&lt;b&gt;Ann&#39;s &amp; &quot;Bo&quot;&lt;/b&gt;</p>',
  );
});

test('markup inside markup stays as it is, one piece or a row of them', () => {
  const rows = ['a', '<'].map((text) => html`<li>${text}</li>`);
  expect(html`<ul>${rows}</ul>${html`<p>${1}</p>`}`.text).toBe('<ul><li>a</li><li>&lt;</li></ul><p>1</p>');
});
