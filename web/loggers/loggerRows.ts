/** The loggers of a house, each with what its readings, its account and the senses say of it. */
import type { ChannelFacts, LoggersAnswer } from '../../server/api/loggerShapes.ts';
import type { Assessment, Message } from '../../src/assessment.ts';
import type { House, Logger } from '../../src/house.ts';
import type { SenseFinding } from '../../src/sense/index.ts';
import { loggerNames } from '../humidity/loggerNames.ts';

export interface LoggerRow {
  readonly name: string;
  readonly logger: Logger;
  /** Null where nothing of it could be read. */
  readonly facts: ChannelFacts | null;
  /** "Europe/London"; null where each row has its offset, or the file was not understood. */
  readonly zone: string | null;
  /** What lying side by side told, in a sentence; null without it. */
  readonly sideBySide: string | null;
  /** Whether something shows against it once all loggers and the sun are seen together. */
  readonly sensed: boolean;
  /** What speaks against it or is worth knowing, without the place, which is its own. */
  readonly findings: readonly Message[];
}

const SIDE_BY_SIDE = 'co-location-offset';
const senses: ReadonlySet<string> = new Set<SenseFinding['code']>([
  'loggers-swapped',
  'logger-placed-elsewhere',
  'logger-in-sun',
  'logger-carried',
  'logger-stopped',
  'same-recording',
  'clock-off-sun',
  'clock-off-peers',
  'clock-off-rhythm',
]);

/** @param assessment null until the house is assessed */
export function loggerRows(
  { loggers }: House,
  { channels }: LoggersAnswer,
  assessment: Assessment | null,
): LoggerRow[] {
  const names = loggerNames(loggers);
  return loggers.map((logger, i) => {
    const files = [logger.file, ...(logger.continuedIn ?? [])];
    const own = channels.filter(({ file, quantity }) => file === logger.file && quantity === 'temperature');
    const imported = assessment?.imports.find(({ file }) => file === logger.file);
    const told = (assessment?.warnings ?? []).filter(({ where }) => files.includes(where?.file ?? ''));
    const notes = (assessment?.imports ?? []).flatMap(({ file, notes: all }) =>
      files.includes(file) ? all : [],
    );
    return {
      name: names[i],
      logger,
      facts: own.find(({ column }) => column === logger.columns?.temperature) ?? own[0] ?? null,
      zone: imported?.understood?.clock.zone ?? null,
      sideBySide: told.find(({ code }) => code === SIDE_BY_SIDE)?.text ?? null,
      sensed: told.some(({ code }) => senses.has(code)),
      findings: onceEach([...told.filter(({ code }) => code !== SIDE_BY_SIDE), ...notes]),
    };
  });
}

function onceEach(messages: readonly Message[]): Message[] {
  const seen = new Set<string>();
  return messages.flatMap(({ code, text, remedy }) => {
    if (seen.has(text)) return [];
    seen.add(text);
    return [{ code, text, ...(remedy === undefined ? {} : { remedy }) }];
  });
}
