/**
 * The docs as the program serves them, read and written once.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { sources } from '../../../handbook/sources.ts';
import { isForGardeners } from './contents.ts';
import { type DocsPage, docsPage } from './markdown.ts';

/** The same place beside the sources and beside the built program. */
const FOLDER = new URL('../../../../docs/', import.meta.url);

/** The pages by name, and the pictures by theirs. */
export interface Docs {
  pages: ReadonlyMap<string, DocsPage>;
  /** The page that tells of each rule. */
  rules: ReadonlyMap<string, string>;
  images: ReadonlyMap<string, Buffer<ArrayBuffer>>;
}

let known: Docs | undefined;

/** All pages and pictures of the docs. */
export function docs(): Docs {
  known ??= readDocs(FOLDER);
  return known;
}

function readDocs(folder: URL): Docs {
  const pictures = readdirSync(new URL('images/', folder)).filter((file) => file.endsWith('.png'));
  const names = readdirSync(folder).flatMap((file) => (file.endsWith('.md') ? [file.slice(0, -'.md'.length)] : []));
  const around = {
    pages: new Set(names),
    images: new Set(pictures),
    citations: new Map<string, string>(sources.map(({ id, citation }) => [id, citation])),
  };
  const written = names.map((name) =>
    docsPage(name, readFileSync(new URL(`${name}.md`, folder), 'utf8'), {
      ...around,
      inBothUnits: isForGardeners(name),
    }),
  );
  return {
    pages: new Map(written.map((each) => [each.name, each])),
    rules: new Map(written.flatMap(({ name, rules }) => rules.map((rule) => [rule, name] as const))),
    images: new Map(pictures.map((file) => [file, readFileSync(new URL(`images/${file}`, folder))])),
  };
}
