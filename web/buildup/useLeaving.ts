/** Whoever leaves the page with changes that are not kept is asked first. */
import { useEffect } from 'preact/hooks';

const QUESTION = 'Your changes to the build-ups are not kept yet. Leave them?';
/** Marks the entry of the history that was put there for the question. */
const GUARD = 'asks before leaving';

export function useLeaving(unkept: boolean): void {
  useEffect(() => {
    if (!unkept) {
      // Nothing is to be asked any more: one step back leaves the page again.
      withdraw();
      return;
    }
    let over = false;
    let stop = () => {};
    withdrawn.then(() => {
      if (!over) stop = askBeforeLeaving();
    });
    return () => {
      over = true;
      stop();
    };
  }, [unkept]);
}

/** @returns what ends it */
function askBeforeLeaving(): () => void {
  guardHistory();
  const onUnload = (event: BeforeUnloadEvent) => event.preventDefault();
  const onClick = (event: MouseEvent) => {
    const link = event.composedPath().find((it) => it instanceof HTMLAnchorElement);
    if (link === undefined || staysHere(event, link)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (!confirm(QUESTION)) return;
    stop();
    withdraw();
    withdrawn.then(() => link.click());
  };
  const onBack = () => {
    if (history.state === GUARD) return;
    if (confirm(QUESTION)) {
      stop();
      history.back();
    } else guardHistory();
  };
  const stop = () => {
    removeEventListener('beforeunload', onUnload);
    removeEventListener('click', onClick, true);
    removeEventListener('popstate', onBack);
  };
  addEventListener('beforeunload', onUnload);
  // Before the router sees it.
  addEventListener('click', onClick, true);
  addEventListener('popstate', onBack);
  return stop;
}

/** Fulfilled once the entry of the question is out of the way: a step back takes its time. */
let withdrawn: Promise<void> = Promise.resolve();

function withdraw(): void {
  if (history.state !== GUARD) return;
  withdrawn = new Promise((resolve) => {
    addEventListener('popstate', () => resolve(), { once: true });
  });
  history.back();
}

/**
 * Puts this page into the history once more: the way back then leads to the page itself, for which the router has
 * nothing to do, and the person can be asked before anything is lost.
 */
function guardHistory(): void {
  if (history.state !== GUARD) history.pushState(GUARD, '');
}

/** A place on this page, another tab, or a file to be saved. */
const staysHere = (event: MouseEvent, link: HTMLAnchorElement) =>
  event.ctrlKey ||
  event.metaKey ||
  event.shiftKey ||
  event.button !== 0 ||
  link.hasAttribute('download') ||
  (link.target !== '' && link.target !== '_self') ||
  (link.getAttribute('href') ?? '').startsWith('#');
