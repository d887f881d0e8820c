/** Logs: the bytes of any temperature log in, its readings out; and all files of a house on one grid. */
export { type FileAccount, type Gathered, gatherRecord, type RecordFinding } from './houseRecord.ts';
export type { LogChannel, LogFinding, LogHints, LogReading } from './log.ts';
export { readLog } from './readLog.ts';
