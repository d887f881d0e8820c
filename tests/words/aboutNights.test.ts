import { expect, test } from 'vitest';
import { aboutNights } from '../../src/words/aboutNights.ts';

test('an opening is told with its fall and its hour before sunrise', () => {
  expect(aboutNights.opened({ code: 'opened', fall: 1.13, beforeSunrise: 22_000 }).text).toBe(
    'it fell by 1.1 K within 20 minutes, 6.1 h before sunrise: a window, door or hatch was opened',
  );
});

test('a thermostat that came back is told with what to do', () => {
  const { text, remedy } = aboutNights['heating-cycled']({ code: 'heating-cycled', times: 5, swing: 0.62 });
  expect(text).toBe('the heating came back 5 times in the night, 0.6 K each time');
  expect(remedy).toBe('Turn the thermostat right down for the night.');
});

test('a time constant that depends on when one begins is told with both figures', () => {
  const note = { from: 94.4 * 3600, to: 107.8 * 3600, later: 3 * 3600, nights: 16 };
  expect(aboutNights['time-constant-moves']({ code: 'time-constant-moves', ...note }).text).toContain(
    '94 h from the hours as chosen, 108 h when 16 nights begin 3.0 h later',
  );
});

test('the room that cools fastest is told with its interval', () => {
  const note = { room: 'Loft', ratio: 0.62, low: 0.55, high: 0.7 };
  expect(aboutNights['room-cools-fastest']({ code: 'room-cools-fastest', ...note }).text).toBe(
    '“Loft” cools fastest: its time constant is 0.55 to 0.70 (0.62) times the house’s. More outer wall or less mass alone can do that.',
  );
});
