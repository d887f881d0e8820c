/** The charts of moist air: temperature, humidity, what follows from both, and what the rooms hold over outdoors. */
import type { HumidityAnswer } from '../../server/api/loggerShapes.ts';
import type { ThinnedChannel } from '../../server/api/shapes.ts';
import { type Family, familiesOf, type Line } from '../charts/readingsSeries.ts';
import { loggerNames } from './loggerNames.ts';

/** Lines count the channels of `answer` first, then those of its excess; a logger has one key and one dash in all. */
export function moistFamilies({ channels, excess, loggers }: HumidityAnswer): Family[] {
  const names = new Map(loggerNames(loggers).map((name, i) => [loggers[i].file, name]));
  const ofLoggers = (own: readonly ThinnedChannel[], before: number) =>
    familiesOf(own).map((family): Family => {
      const lines = family.lines.map((line): Line => {
        const { file } = own[line.channel];
        return { ...line, key: file, label: names.get(file) ?? line.label, channel: line.channel + before };
      });
      return { ...family, lines, midway: true };
    });
  const over = ofLoggers(excess, channels.length);
  return [...ofLoggers(channels, 0), ...over.map((it) => ({ ...it, title: 'Vapour over outdoors' }))];
}
