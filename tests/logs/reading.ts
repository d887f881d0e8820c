/** Reads a text as a log and says plainly what came of it. */
import type { LogFinding, LogHints, LogReading } from '../../src/logs/index.ts';
import { readLog } from '../../src/logs/index.ts';

export const hints = (changed: Partial<LogHints> = {}): LogHints => ({
  timeZone: 'UTC',
  clockOffset: 0,
  columns: {},
  ...changed,
});

export const read = (content: string | Uint8Array, changed: Partial<LogHints> = {}): LogReading =>
  readLog(
    'log.csv',
    typeof content === 'string' ? new TextEncoder().encode(content) : content,
    hints(changed),
  );

/** Channels as [header, quantity, instants as "YYYY-MM-DDThh:mm:ssZ", values in SI]. */
export const channelsOf = (reading: LogReading) =>
  reading.kind === 'read'
    ? reading.channels.map(
        ({ column, quantity, time, value }) =>
          [column, quantity, Array.from(time, isoOf), [...value]] as const,
      )
    : [];

export const isoOf = (instant: number) => new Date(instant * 1000).toISOString().replace('.000Z', 'Z');

export const codesOf = (reading: LogReading) => reading.findings.map(({ code }) => code);

export function finding<Code extends LogFinding['code']>(reading: LogReading, code: Code) {
  return reading.findings.find((it): it is Extract<LogFinding, { code: Code }> => it.code === code);
}
