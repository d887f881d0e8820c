/** The charts of moist air: temperature, humidity, what follows from both, and what the rooms hold over outdoors. */
import type { HumidityAnswer } from '../../server/api/loggerShapes.ts';
import { type Family, familiesOf } from '../charts/readingsSeries.ts';

/** Lines count the channels of `answer` first, then those of its excess. */
export function moistFamilies({ channels, excess }: HumidityAnswer): Family[] {
  const over = familiesOf(excess).map(
    (family): Family => ({
      ...family,
      title: 'Vapour over outdoors',
      lines: family.lines.map((line) => ({ ...line, channel: line.channel + channels.length })),
    }),
  );
  return [...familiesOf(channels), ...over];
}
