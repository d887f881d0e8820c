/** What each logger is called on a page: its room or its place, with the file where two would be called alike. */
import type { ThinnedChannel } from '../../server/api/shapes.ts';

const places: { readonly [P in ThinnedChannel['place']]: string } = {
  inside: 'Inside',
  outside: 'Outside',
  void: 'Void',
  surface: 'Surface',
  adjacent: 'Next door',
  weather: 'Weather',
  heat: 'Heat',
};

interface Named {
  readonly file: string;
  readonly room?: string | null | undefined;
  readonly place: ThinnedChannel['place'];
}

export function loggerNames(loggers: readonly Named[]): string[] {
  const plain = loggers.map(({ room, place }) => room ?? places[place]);
  return plain.map((name, i) =>
    plain.filter((it) => it === name).length > 1 ? `${name} (${loggers[i].file})` : name,
  );
}
