/**
 * `npx tsx tests/web/bringing/makeTowns.ts`: the towns that a house's place can be picked from. They are the
 * principal places of the tz database's zone.tab, which is in the public domain.
 */
import { readFileSync, writeFileSync } from 'node:fs';

const table = readFileSync('/usr/share/zoneinfo/zone.tab', 'utf8');
const towns = table
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [country, at, timeZone] = line.split('\t');
    const [, latitude, longitude] = /^([-+]\d+)([-+]\d+)$/.exec(at) ?? [];
    return { country, latitude: degrees(latitude, 2), longitude: degrees(longitude, 3), timeZone };
  })
  .toSorted((a, b) => a.timeZone.localeCompare(b.timeZone, 'en'));
const line = (town: object) => `  ${JSON.stringify(town, null, 1).replace(/\n\s*/g, ' ')}`;
writeFileSync(
  new URL('../../../web/bringing/towns.json', import.meta.url),
  `[\n${towns.map(line).join(',\n')}\n]\n`,
);

/** "+5130" or "-0000731" in degrees to two decimals: ISO 6709, degrees, minutes and perhaps seconds. */
function degrees(text: string, digits: number): number {
  const size = text.slice(1);
  const [whole, minutes, seconds] = [
    size.slice(0, digits),
    size.slice(digits, digits + 2),
    size.slice(digits + 2),
  ];
  const value = Number(whole) + Number(minutes) / 60 + Number(seconds) / 3600;
  return Math.round((text.startsWith('-') ? -value : value) * 100) / 100;
}
