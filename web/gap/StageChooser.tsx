/** One stage at a time: the others by their names. */
export interface StageChooserProps {
  /** In the order in which they are offered. */
  readonly names: readonly string[];
  readonly shown: string;
  readonly href: (name: string) => string;
}

export function StageChooser({ names, shown, href }: StageChooserProps) {
  if (names.length < 2) return null;
  return (
    <>
      <nav aria-label="Stages" class="stage-chooser">
        <span class="lesser" aria-hidden="true">
          Stage
        </span>
        <ul class="page-names">
          {names.map((name) => (
            <li key={name}>
              <a href={href(name)} aria-current={name === shown ? 'true' : undefined}>
                {name}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <p class="print-only">Stage: {shown}</p>
    </>
  );
}
