export { type AcceptanceRule, type Averaged, averageMethod, type Block } from './averageMethod.ts';
export type { SurfaceNote } from './note.ts';
export { type SurfaceHint, surfaceHints } from './surfaceHints.ts';
