export { type InWind, type Look, type LookKind, STANDS_OUT } from './look.ts';
export type { LookNote, LooksNote } from './note.ts';
export { type ToLook, type WhereToLook, whereToLook } from './whereToLook.ts';
