import { renderFeed } from '../../src/calendar/render-feed.ts';
import { exampleFeed, varied } from './example-feed.ts';

process.stdout.write(renderFeed(exampleFeed(varied)));
