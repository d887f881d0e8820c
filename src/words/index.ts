export * as figures from './figures.ts';
export { methodNames, reasonsInBrief, verdictSentences } from './names.ts';
export { type Finding, heaterCautions, say } from './say.ts';
