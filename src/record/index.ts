/** The record: all files of a house on one grid, each logger with its offsets, and what only shows when seen together. */
export type { RecordFinding } from './finding.ts';
export { type Gathered, gatherRecord } from './gather.ts';
export { type FileAccount, type FileRemark, type FileStep, filesNamed, type ReadingFiles } from './shelf.ts';
