/** Many links that are one stop for the Tab key: the arrow keys walk from one to the next. */
const moves: { readonly [key: string]: (at: number, last: number) => number } = {
  ArrowLeft: (at) => at - 1,
  ArrowRight: (at) => at + 1,
  Home: () => 0,
  End: (_, last) => last,
};

export function walk(event: KeyboardEvent & { readonly currentTarget: Element }): void {
  const links = [...event.currentTarget.querySelectorAll<HTMLElement | SVGAElement>('a')];
  const at = links.findIndex((link) => link.matches(':focus'));
  const next = links[moves[event.key]?.(at, links.length - 1) ?? -1];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}
