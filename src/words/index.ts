export * as figures from './figures.ts';
export { methodNames, verdictSentences } from './names.ts';
export { type Finding, heaterCautions, say } from './say.ts';
