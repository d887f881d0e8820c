export { cutTo, sayFitting, sayJoints } from './aboutAirGaps.ts';
export * as figures from './figures.ts';
export { doubtNames, methodNames, reasonsInBrief, unitsWritten, verdictSentences } from './names.ts';
export { heaterCautions } from './nextSteps.ts';
export { type Finding, say } from './say.ts';
export { clockWords, writtenWords } from './understood.ts';
