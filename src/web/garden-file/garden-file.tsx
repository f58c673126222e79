/**
 * The garden as a file: handed out, and brought in again; and a new garden from one.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import {
  bringInPath,
  gardenFilePath,
  gardenYamlPath,
  handbookPath,
  undoPath,
  weekPath,
} from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';

/** What the form came back with. */
export interface FileEntered {
  text: string;
  prefer: 'reported' | 'file';
}

interface GardenFilePageProps {
  garden: Garden;
  entered?: FileEntered;
  /** The entry that brought a file in just now. */
  brought?: number;
  problems?: readonly Problem[];
}

/** The page of a garden's file. */
export function gardenFilePage({ garden, entered, brought, problems = [] }: GardenFilePageProps) {
  return page(
    { title: 'Garden file', garden, here: 'garden', docs: 'garden-file' },
    <article class="garden-file">
      <h1>Garden file</h1>
      {brought !== undefined && (
        <p role="status">
          Brought in. <a href={undoPath(garden.id, brought)}>Take it back</a>, or look at{' '}
          <a href={weekPath(garden.id)}>This week</a>.
        </p>
      )}
      <p>
        All that Loamtide was told of this garden fits into one text file: to keep in a safe place, to carry to another
        computer, or to change many things at once. <a href={handbookPath('garden-file')}>Every word of it</a> is
        explained in the handbook.
      </p>
      <h2>Take a copy</h2>
      <p>
        <a href={gardenYamlPath(garden.id)}>Download {garden.id}.yaml</a>
      </p>
      <p class="small">
        It holds the garden as it stands, with every bed, planting, cover, pile and what was seen of them. Marks of work
        done, days pinned and the weather you logged stay here.
        {garden.climate.kind === 'daily-record' && ' The weather record it names is a file of its own.'}
      </p>
      <h2>Bring a changed file in</h2>
      <Problems problems={problems} />
      <form method="post" action={gardenFilePath(garden.id)} enctype="multipart/form-data">
        <FileFields text={entered?.text ?? ''} />
        <fieldset>
          <legend>Where the file and what was reported here do not agree</legend>
          <label class="choice">
            <input type="radio" name="prefer" value="reported" checked={entered?.prefer !== 'file'} />
            <span>
              what was reported, or changed here since, stays
              <span class="under">a change made here gives way where the file says something new of it</span>
            </span>
          </label>
          <label class="choice">
            <input type="radio" name="prefer" value="file" checked={entered?.prefer === 'file'} />
            <span>the file is taken at its word</span>
          </label>
        </fieldset>
        <button type="submit">See what it would change</button>
        <p class="small">Nothing is kept before you have seen that.</p>
      </form>
    </article>,
  );
}

/** The page that brings a new garden in. */
export function bringInPage({ text = '', problems = [] }: { text?: string; problems?: readonly Problem[] }) {
  return page(
    { title: 'Bring a garden in', docs: 'garden-file' },
    <article class="garden-file">
      <h1>Bring a garden in from its file</h1>
      <p>
        A garden that was kept elsewhere comes here with its file: from another computer, or written by hand.{' '}
        <a href={handbookPath('garden-file')}>The handbook</a> explains every word of such a file.
      </p>
      <Problems problems={problems} />
      <form method="post" action={bringInPath()} enctype="multipart/form-data">
        <FileFields text={text} />
        <button type="submit">See what is in it</button>
        <p class="small">Nothing is kept before you have seen that.</p>
      </form>
    </article>,
  );
}

const FileFields = ({ text }: { text: string }) => (
  <>
    <label>
      A file <input type="file" name="file" accept=".yaml,.yml,.json,text/yaml,application/json,text/plain" />
    </label>
    <label>
      or its text
      <textarea name="text" rows={text === '' ? 6 : 20} spellcheck={false} autocomplete="off">
        {text}
      </textarea>
    </label>
  </>
);
