export * as figures from './figures.ts';
export { type Finding, heaterCautions, say } from './say.ts';
