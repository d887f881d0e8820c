/** One recording under two names. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SensedLogger, senseOf } from '../../src/sense/index.ts';
import { changed, HOUR, place, shifted, simulatedHouse } from './simulatedHouse.ts';

const { loggers } = simulatedHouse(321);
const [living, kitchen, bedroom] = loggers;
const copyOf = (logger: SensedLogger): SensedLogger => ({ ...logger, file: 'copy.csv' });
const asked = (copy: SensedLogger) => senseOf([...loggers, copy], null, place);

describe('a recording that is there twice', () => {
  test('is asked about once, and by no other sense', () => {
    expect(asked(copyOf(living))).toMatchObject([
      { code: 'same-recording', where: { file: 'copy.csv' }, other: { file: 'living.csv' }, shift: 0 },
    ]);
  });

  test('with its clock moved is found with the shift, whatever it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: -72 * HOUR, max: 72 * HOUR }), (ahead) => {
        expect(asked(shifted(copyOf(kitchen), ahead))).toMatchObject([
          { code: 'same-recording', shift: 0 - ahead },
        ]);
      }),
      { numRuns: 15 },
    );
  });

  test('rounded to half a kelvin is found', () => {
    expect(asked(changed(copyOf(bedroom), (it) => Math.round(2 * it) / 2))).toMatchObject([
      { code: 'same-recording', resolution: 0.5 },
    ]);
  });

  test('with every third reading only is found', () => {
    const third = (values: Float64Array) => values.filter((_, i) => i % 3 === 0);
    const { time, value } = bedroom.temperature;
    const thinned = {
      file: 'copy.csv',
      place: bedroom.place,
      temperature: { time: third(time), value: third(value) },
    };
    expect(asked(thinned)).toMatchObject([{ code: 'same-recording', shift: 0 }]);
  });

  test('is another recording when a second logger lay beside the first and read a tenth otherwise now and then', () => {
    let k = 0;
    const beside = changed(copyOf(living), (it) => it + (k++ % 20 === 0 ? 0.1 : 0));
    expect(asked(beside)).toEqual([]);
  });
});
