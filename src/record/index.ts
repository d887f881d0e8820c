/** The record: all files of a house on one grid, each logger with its offsets, and what only shows when seen together. */
export type { RecordFinding } from './finding.ts';
export { type Gathered, gatherRecord } from './gather.ts';
export { channelOf, exportsOf } from './readings.ts';
export {
  type Entry,
  type FileAccount,
  type FileRemark,
  type FileStep,
  filesNamed,
  filesOf,
  type ReadFile,
  type ReadingFiles,
  type Shelf,
  shelfOf,
} from './shelf.ts';
