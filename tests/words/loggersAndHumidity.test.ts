import { describe, expect, test } from 'vitest';
import { airSentence, dryingSentence, ordinarySentence } from '../../src/words/aboutHumidity.ts';
import { gapsWords, loggersCounted, placeWords, resolutionWords } from '../../src/words/loggerFacts.ts';
import { heatersSentence } from '../../src/words/testPlan.ts';

const nights = (from: number, to: number, count = 14) =>
  Array.from({ length: count }, (_, i) => ({
    excessGM3: i < count / 2 ? from : to,
    outsideC: 0,
  }));

describe('a house that dries', () => {
  test('is told by what its rooms hold over outdoors, first nights against last', () => {
    expect(dryingSentence(nights(4.2, 2.1))).toContain(
      'fell from 4.2 g/m³ in the first 7 nights to 2.1 g/m³ in the last 7: the house is drying',
    );
    expect(dryingSentence(nights(1, 2))).toContain('rose from 1.0 g/m³');
    expect(dryingSentence(nights(1, 1.2))).toContain('hardly changed');
  });

  test('is not judged by fewer than two weeks', () => {
    expect(dryingSentence(nights(4, 1, 13))).toBeNull();
  });

  test('that holds more than a lived-in one is told that its heat loss reads too high', () => {
    // MEMORY: ISO 13788:2012, Annex A, class 2: at most 4 g/m³ at 0 °C outside.
    expect(ordinarySentence(nights(5, 5))).toMatch(/up to about 4\.0 g\/m³ .* reads too high/);
    expect(ordinarySentence(nights(3, 3))).not.toMatch(/too high/);
  });
});

test('the air of the rooms is told with its water, its humidity and its dew point', () => {
  expect(
    airSentence({
      temperatureC: 18,
      humidityPercent: 52,
      absoluteGM3: 8.04,
      dewPointC: 8.1,
      excessGM3: null,
    }),
  ).toBe(
    'On average each cubic metre of air in the rooms held 8.0 g of water: a humidity of 52 %, and what is colder than 8.1 °C grew wet in it.',
  );
});

test('loggers are counted by where they sit, each told with what it belongs to', () => {
  expect(loggersCounted([{ place: 'inside' }, { place: 'inside' }, { place: 'void' }])).toBe(
    '3 loggers: 2 inside and 1 in a void.',
  );
  expect(placeWords({ place: 'void', element: 'Ceiling' })).toBe('in the void behind “Ceiling”');
});

test('gaps and steps are told in plain figures', () => {
  expect(gapsWords({ count: 2, longest: 12_600 })).toBe('2, the longest 3.5 h');
  expect(resolutionWords(0.0625, '°C')).toBe('0.06 °C');
  expect(resolutionWords(0.5, '°C')).toBe('0.5 °C');
});

test('more heat than one heater and one circuit give is shared out', () => {
  expect(heatersSentence(1500, 6)).toContain('One electric heater of about 1.5 kW, on one circuit');
  expect(heatersSentence(3500, 6)).toMatch(
    /2 electric heaters of about 1\.8 kW each, 3\.5 kW in all, shared out on 2 separate circuits, for 6 hours: 21 kWh/,
  );
  // No circuit carries two of three.
  expect(heatersSentence(5000, 8)).toMatch(/^4 electric heaters of about 1\.3 kW each/);
});
