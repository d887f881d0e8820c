/** Whoever leaves the page with changes that are not kept is asked first. */
import { useEffect } from 'preact/hooks';

const QUESTION = 'Your changes to the build-ups are not kept yet. Leave them?';
/** Marks the entry of the history that was put there for the question. */
const GUARD = 'asks before leaving';

export function useLeaving(unkept: boolean): void {
  useEffect(() => {
    if (!unkept) return;
    guardHistory();
    const onUnload = (event: BeforeUnloadEvent) => event.preventDefault();
    const onClick = (event: MouseEvent) => {
      const link = event.composedPath().find((it) => it instanceof HTMLAnchorElement);
      if (link === undefined || staysHere(event, link) || confirm(QUESTION)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    const onBack = () => {
      if (confirm(QUESTION)) {
        removeEventListener('popstate', onBack);
        history.back();
      } else guardHistory();
    };
    addEventListener('beforeunload', onUnload);
    // Before the router sees it.
    addEventListener('click', onClick, true);
    addEventListener('popstate', onBack);
    return () => {
      removeEventListener('beforeunload', onUnload);
      removeEventListener('click', onClick, true);
      removeEventListener('popstate', onBack);
    };
  }, [unkept]);
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
