/** Common build-ups in plain words, to begin from. */
export type { StartingPoint } from './parts.ts';
export { startingPoints } from './startingPoints.ts';
