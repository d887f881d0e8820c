/** A small invented house folder: two loggers, three January nights, an exponential fall of 40 hours. */
const log = (temperatureAt: (hour: number) => number, from = 0, to = 3 * 144) => {
  const rows = Array.from({ length: to - from }, (_, k) => {
    const i = from + k;
    const time = new Date(Date.UTC(2027, 0, 10, 12) + i * 600_000);
    return `${time.toISOString().slice(0, 16).replace('T', ' ')},${temperatureAt(12 + i / 6).toFixed(2)}`;
  });
  return ['Time,Temperature (°C)', ...rows].join('\n');
};

const indoors = (hour: number) => {
  const since = (hour % 24) - 20 + (hour % 24 < 12 ? 24 : 0);
  return since < 0 || since > 11 ? 20 : 5 + 15 * Math.exp(-since / 40);
};

export const inside = log(indoors);
/** The same logger from the row `from` to before the row `to`; what is brought first has 432 of them. */
export const insideFrom = (from: number, to: number) => log(indoors, from, to);
/** Another one, in a warmer room. */
export const bedroom = log((hour) => 20 + indoors(hour) / 20 + Math.sin(hour));
export const outside = log(() => 5);

export const house = {
  name: 'Test house',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [
    { file: 'in.csv', place: 'inside', room: 'Hall' },
    { file: 'logs/out.csv', place: 'outside' },
  ],
};

/** Not as JSON.stringify would write it, so that byte for byte means something. */
export const houseText = `\uFEFF${JSON.stringify(house, null, 3)}\r\n`;

export const houseFolder = { 'house.json': houseText, 'in.csv': inside, 'logs/out.csv': outside };
