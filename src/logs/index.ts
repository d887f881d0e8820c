/** Logs: the bytes of any temperature log in, its readings out. */
export {
  type DoubtKind,
  doubtKinds,
  type LogChannel,
  type LogFinding,
  type LogHints,
  type LogReading,
} from './log.ts';
export { findHeader } from './names.ts';
export { readLog } from './readLog.ts';
export type { Understood } from './understood.ts';
