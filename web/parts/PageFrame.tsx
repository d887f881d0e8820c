/** A page like a good letter: whose house, its other pages in words, then one column that everything begins at. */
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import './PageFrame.css';

export interface PageFrameProps {
  /** The page's own name, heard first and shown in the browser's title. */
  readonly title: string;
  /** The house that the page belongs to, when there is one. */
  readonly house?: { readonly id: string; readonly name: string; readonly invented: boolean };
  /** The name of the page among those of the house, or the list of them. */
  readonly here?: HousePageName | 'Houses';
  /** No other page is open to whoever reads this one. */
  readonly alone?: boolean;
  readonly children: ComponentChildren;
}

export type HousePageName = (typeof housePages)[number]['name'];

const housePages = [
  { name: 'The answer', path: '' },
  { name: 'Nights', path: '/nights' },
  { name: 'Readings', path: '/readings' },
  { name: 'Humidity', path: '/humidity' },
  { name: 'Loggers', path: '/loggers' },
  { name: 'As drawn', path: '/design' },
  { name: 'The gap', path: '/gap' },
  { name: 'Stages', path: '/stages' },
] as const;

export function PageFrame({ title, house, here, alone = false, children }: PageFrameProps) {
  useEffect(() => {
    document.title = house === undefined ? `${title} · Stillwarm` : `${title} · ${house.name}`;
  }, [title, house]);
  return (
    <div class="page">
      <a href="#content" class="skip">
        Skip to the content
      </a>
      <header class="page-head">
        <p class="page-home">{alone || here === 'Houses' ? 'Stillwarm' : <a href="/">All houses</a>}</p>
        {house === undefined ? (
          <h1>{title}</h1>
        ) : (
          <>
            <h1>
              {house.name}
              {here === 'The answer' ? null : <span class="spoken">: {title}</span>}
            </h1>
            {house.invented ? (
              <p class="small lesser">Its readings are invented, to show what comes of real ones.</p>
            ) : null}
            <HousePages id={house.id} here={here} />
          </>
        )}
      </header>
      <main id="content" tabIndex={-1}>
        {children}
      </main>
      <footer class="small lesser">
        A result is evidence, not a certificate. Local codes and licensed practice decide.
      </footer>
    </div>
  );
}

function HousePages({ id, here }: { id: string; here: string | undefined }) {
  return (
    <nav aria-label="Pages of this house">
      <ul class="page-names">
        {housePages.map(({ name, path }) => (
          <li key={name}>
            <a href={`/house/${id}${path}`} aria-current={name === here ? 'page' : undefined}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
