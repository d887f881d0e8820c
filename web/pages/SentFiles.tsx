/** What became of every file that was given, while it is sent, and afterwards of those that have not come. */
import { figures } from '../../src/words/index.ts';
import type { SentFile } from './useBringing.ts';

interface SentFilesProps {
  readonly files: readonly SentFile[];
  readonly sending: boolean;
  /** Sends those that have not come. */
  readonly sendRest: () => void;
}

export function SentFiles({ files, sending, sendRest }: SentFilesProps) {
  const absent = files.filter(({ state }) => state === 'not come');
  if (sending)
    return (
      <ul class="small sent" aria-label="Files being sent">
        {files.map(({ path, file, state }) => (
          <li key={path} class={state === 'come' ? undefined : 'lesser'}>
            {path} <span class="figure">({megabytes(file.size)})</span> {words[state]}
          </li>
        ))}
      </ul>
    );
  if (absent.length === 0) return null;
  const come = files.length - absent.length;
  return (
    <section aria-live="polite">
      <h2>Not all has come</h2>
      <p>
        {come === 0 ? 'No file has come' : `${figures.count(come, 'file')} came whole and stayed`}. Not come:{' '}
        <strong>{absent.map(({ path }) => path).join(', ')}</strong>.
      </p>
      <button type="button" onClick={sendRest}>
        Send what has not come
      </button>
    </section>
  );
}

const words: Record<SentFile['state'], string> = {
  waiting: 'waits its turn.',
  sending: 'is being sent.',
  come: 'has come.',
  'not come': 'has not come.',
};

const megabytes = (bytes: number) =>
  bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1e3))} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
