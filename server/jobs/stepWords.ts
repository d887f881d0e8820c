/** Each step of a calculation in words, and how much of the whole lies before it. */
import type { AssessStep } from '../../src/assess.ts';
import type { Work } from '../api/shapes.ts';

/** Shares of the time that reading the logs, judging the nights and going through the stages take, roughly. */
const READING = 0.5;
const NIGHTS = 0.05;
const STAGES = 0.05;

/** The steps of an assessment. */
export const assessing = (step: AssessStep): Work => ({ done: shareBefore(step), what: stepSentence(step) });

/** The reading of a folder alone, which is all there is to a preview. */
export const reading = (step: AssessStep): Work => ({
  done: step.kind === 'read' ? step.done / step.of : 1,
  what: stepSentence(step),
});

function stepSentence(step: AssessStep): string {
  switch (step.kind) {
    case 'read':
      return `Reading ${step.file}, file ${step.done + 1} of ${step.of}.`;
    case 'nights':
      return 'Looking at every night for one that can be judged.';
    case 'stage':
      return step.of === 1
        ? 'Working out what the house loses.'
        : `Working out what the house loses at the stage “${step.name}”, ${step.done + 1} of ${step.of}.`;
    case 'network':
      return `Fitting the house as drawn to what was logged, round ${step.done + 1} of at most ${step.of}.`;
  }
}

function shareBefore(step: AssessStep): number {
  switch (step.kind) {
    case 'read':
      return (READING * step.done) / step.of;
    case 'nights':
      return READING;
    case 'stage':
      return READING + NIGHTS + (STAGES * step.done) / step.of;
    case 'network':
      return READING + NIGHTS + STAGES + ((1 - READING - NIGHTS - STAGES) * step.done) / step.of;
  }
}
