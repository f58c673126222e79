/**
 * Nothing is told by colour alone: what has a colour of its own has a pattern, a stroke or a word besides.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { sampleFile } from '../web/sample-garden.ts';
import { openBrowser } from './browser.ts';
import { servedHome } from './served-garden.ts';

const CHARTS = new URL('../../src/web/charts/', import.meta.url);

/** Every component of the charts: where one of it is on a page, and how it is read without colour. */
const READ_IN_GREY: Readonly<Record<string, { on: string; at: string; by: string }>> = {
  CourseFrame: { on: '/weather', at: '.drawing svg .today-line', by: 'today is dotted, and its word stands below' },
  DateDrawing: { on: 'task', at: '.date-drawing svg[aria-label]', by: 'each line has its words above it' },
  DoingGlyph: { on: '/year', at: '.year-row .sign', by: 'a shape for each kind of work' },
  FitDrawing: { on: '/weather', at: '.drawing [aria-label*="days up to today"]', by: 'strokes, told below' },
  FreezeSpread: { on: '/climate', at: '.drawing [aria-label*="last freeze"]', by: 'each line has its words' },
  GroundPatterns: { on: '/year', at: '#ground-cover', by: 'a pattern for each, named in the legend' },
  ModelledLines: { on: '/weather', at: '.drawing .usual-line', by: 'thin, strong and broken lines over a band' },
  MonthAxis: { on: '/climate', at: '.drawing .axis', by: 'months in words' },
  PileDrawing: {
    on: '/compost',
    at: '.drawing [aria-label^="Heat of the pile"]',
    by: 'dots, dotted limits, told below',
  },
  SnowDrawing: { on: '/weather', at: '.drawing [aria-label^="Depth of the snow"]', by: 'strokes with their words' },
  SoilWaterDrawing: { on: '/weather', at: '.drawing [aria-label^="Water gone"]', by: 'strokes with their words' },
  SupplyDrawing: { on: '/compost', at: '.drawing [aria-label^="Compost from"]', by: 'whole and broken, told below' },
  TemperatureDrawing: { on: '/weather', at: '.drawing [aria-label^="Lowest"]', by: 'strokes with their words' },
  UsualYearDrawing: { on: '/climate', at: '.drawing [aria-label^="The usual year"]', by: 'lines with their words' },
  WeeklyTable: { on: '/weather', at: 'table.figures', by: 'figures' },
  YearAxis: { on: '/year', at: '.year-axis', by: 'months in words' },
  YearBand: { on: '/year', at: '.year-band .share-line', by: 'strokes, and a share in words' },
  YearChart: { on: '/year', at: '.year-chart', by: 'a row a bed, each with its name' },
  YearLegend: { on: '/year', at: '.year-legend', by: 'each pattern and sign with its word' },
  YearRules: { on: '/year', at: '.month-rule', by: 'lines alone' },
  YearStrip: { on: '/year', at: '.held-box', by: 'patterns of families and ground, with names' },
};

/** Pages of the demo garden, and those that take long there of a small one. */
const PAGES = ['', 'task', '/year', '/compost', '/weather', '/fertility', '/climate', '/beds', '/season-end'] as const;
const OF_SMALL: ReadonlySet<string> = new Set(['/beds', '/season-end']);

test('every chart has a line about how it is read without colour', () => {
  const files = readdirSync(CHARTS).filter((name) => name.endsWith('.tsx'));
  const components = files.flatMap((name) =>
    [...readFileSync(new URL(name, CHARTS), 'utf8').matchAll(/^export (?:const|function) ([A-Z][a-z]\w*)/gm)].map(
      ([, component]) => component,
    ),
  );
  expect(components.sort()).toEqual(Object.keys(READ_IN_GREY).sort());
});

test('on the pages with drawings and standings nothing is told by colour alone', async () => {
  const { origin, steward } = await servedHome();
  const demo = await steward.showDemo();
  const small = sampleFile();
  await steward.importGarden({ file: checkGardenFile(small), prefer: 'file' }, 'test');
  const { plan } = await steward.view(demo);
  const task = plan.tasks.find(({ state, window }) => state === 'open' && window.earliest !== window.latest);
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 }, colorScheme: 'light' });
  const faults: string[] = [];
  let coloured = 0;
  for (const path of PAGES) {
    const id = OF_SMALL.has(path) ? small.garden.id : demo;
    await page.goto(`${origin}/gardens/${id}${path === 'task' ? `/tasks/${task?.key}` : path}`);
    const found = await page.evaluate<{ coloured: number; faults: string[] }>(`(${toldByColour})()`);
    coloured += found.coloured;
    faults.push(...found.faults.map((fault) => `${path}: ${fault}`));
    for (const [name, { on, at }] of Object.entries(READ_IN_GREY))
      if (on === path && (await page.locator(at).count()) === 0) faults.push(`${path}: no ${name} at ${at}`);
  }
  expect(faults).toEqual([]);
  expect(coloured).toBeGreaterThan(20);
}, 60_000);

/**
 * Runs in the browser, whose types this project does not load. Ink, paper, and the two greys of words and rules tell nothing;
 * any other colour does. A shape that has one is a stroke of a pattern, a dashed stroke, or a mark with its word behind it;
 * a text that has one, and whose parent has not, is set otherwise too, or is nothing but the word of a mark.
 */
const toldByColour = `() => {
  for (const folded of document.querySelectorAll('details')) folded.open = true;
  const probe = document.body.appendChild(document.createElement('i'));
  const resolved = (name) => ((probe.style.color = 'var(' + name + ')'), getComputedStyle(probe).color);
  const plain = new Set(['--paper', '--ink', '--quiet', '--line', '--strong-line'].map(resolved));
  probe.remove();
  const isOwn = (paint) => /^rgb/.test(paint) && !/, 0\\)$/.test(paint) && !plain.has(paint);
  const faults = [];
  let coloured = 0;
  const told = (node, why) => faults.push(why + ': ' + node.outerHTML.slice(0, 140));
  const wordsBeside = (node) => (node.closest('svg').parentElement.textContent ?? '').trim() !== '';
  for (const shape of document.querySelectorAll('svg :is(path, rect, circle, line, polygon, ellipse, text)')) {
    const { fill, stroke, strokeDasharray } = getComputedStyle(shape);
    if (shape.localName === 'path' && shape.closest('svg.pattern') ? !isOwn(stroke) : !isOwn(fill) && !isOwn(stroke)) continue;
    coloured += 1;
    const isMark = shape.closest('svg.pattern') !== null && wordsBeside(shape);
    const isDashed = isOwn(stroke) && !isOwn(fill) && strokeDasharray !== 'none';
    if (shape.closest('pattern') === null && !isMark && !isDashed && shape.localName !== 'text') told(shape, 'a shape by its colour alone');
  }
  const set = (style) => [style.fontWeight, style.fontStyle, style.textDecorationLine, style.borderLeftStyle, style.borderBottomStyle, style.display].join();
  for (const node of document.querySelectorAll('body *:not(svg, svg *)')) {
    const [own, around] = [getComputedStyle(node), getComputedStyle(node.parentElement)];
    if (isOwn(own.backgroundColor)) { coloured += 1; if (node.textContent.trim() === '') told(node, 'a ground without a word'); }
    for (const side of ['Left', 'Right', 'Top', 'Bottom'])
      if (own['border' + side + 'Style'] !== 'none' && isOwn(own['border' + side + 'Color'])) {
        coloured += 1;
        if (node.textContent.trim() === '' && node.value === undefined) told(node, 'an edge without a word');
      }
    if (!isOwn(own.color) || own.color === around.color || node.textContent.trim() === '') continue;
    coloured += 1;
    const isMarked = node.querySelector('svg') !== null;
    if (!isMarked && set(own) === set(around)) told(node, 'words by their colour alone');
  }
  return { coloured, faults };
}`;
