/** The fit of the design's network as whoever waits for it meets it: its rounds, its end by force, and why there is none. */
import { expect, test } from 'vitest';
import { type AssessStep, assessRecord } from '../src/assess.ts';
import { say } from '../src/words/index.ts';
import { codesOf } from './fabric/inventedHouse.ts';
import { proved } from './proving/judging/told.ts';

const { house, record } = proved('timber cabin', 'loggers, layers known');
const isRound = (step: AssessStep) => step.kind === 'network';

test('the fit tells each of its rounds, after the stages, counted from the first and never more than it said', () => {
  const steps: AssessStep[] = [];
  assessRecord(house, record, (step) => steps.push(step));
  const rounds = steps.filter(isRound);
  expect(steps.slice(-rounds.length)).toEqual(rounds);
  // two searches of one round at least, and a last one
  expect(rounds.length).toBeGreaterThanOrEqual(3);
  expect(rounds.map(({ done }) => done)).toEqual(rounds.map((_, k) => k));
  for (const { done, of } of rounds) expect(done).toBeLessThan(of);
});

test('whoever is told of a round can end the fit there', () => {
  const told: AssessStep[] = [];
  const ended = () =>
    assessRecord(house, record, (step) => {
      told.push(step);
      if (step.kind === 'network' && step.done === 1) throw new Error('enough');
    });
  expect(ended).toThrow('enough');
  expect(told.filter(isRound)).toHaveLength(2);
});

test('a house with neither floor area nor volume is told why its network is missing, and what would bring it', () => {
  const { floorAreaM2, volumeM3, ventilation, ...unsized } = house;
  const methodsOf = (of: typeof house) => {
    const { stages, findings } = assessRecord(of, record);
    return { methods: stages.flatMap(({ estimates }) => estimates.map(({ method }) => method)), findings };
  };
  const without = methodsOf(unsized);
  expect(without.methods).not.toContain('network');
  const finding = without.findings.find(({ code }) => code === 'size-unknown');
  expect(finding?.where).toEqual({ key: 'floorAreaM2' });
  expect(finding && say(finding)).toMatchObject({
    text: expect.stringMatching(/floor area.*volume/),
    remedy: expect.stringContaining('"floorAreaM2"'),
  });

  // the key that is asked for is enough
  const sized = methodsOf({ ...unsized, floorAreaM2 });
  expect(sized.methods).toContain('network');
  expect(codesOf(sized.findings)).not.toContain('size-unknown');
});
