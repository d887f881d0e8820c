/** The zone of a file's clock, where the file states it: in its rows, over its times, or in its preamble. */
import { extentOf } from './extent.ts';
import type { LogFinding, LogHints } from './log.ts';
import type { Preamble } from './understood.ts';
import { zoneBetween } from './zone.ts';
import { isAmbiguousZone, offsetName, saysSummerTime, zoneNamed } from './zoneNamed.ts';

export interface FileZone {
  readonly by: 'the header' | 'the preamble' | 'the house';
  /** Fixed offset from UTC [s]; null where the file states none or a zone with changes. */
  readonly offset: number | null;
  /** IANA zone, or an offset such as "+01:00". */
  readonly zone: string;
  readonly findings: readonly LogFinding[];
}

/**
 * @param headers  of the columns of time, and what the units row says of them
 * @param cells    times of a sample of the rows
 * @param shown    what the clock showed on them [s since 1970, as if UTC]; NaN where that is unknown
 * @param hints    a zone stated for the file goes before what it says; that of the house is for a silent one
 */
export function fileZone(
  file: string,
  headers: readonly string[],
  { zone: preamble, lines }: Preamble,
  cells: readonly string[],
  shown: Float64Array,
  { timeZone: house, clockZone }: Pick<LogHints, 'timeZone' | 'clockZone'>,
): FileZone {
  if (clockZone !== undefined) return { by: 'the house', offset: null, zone: clockZone, findings: [] };
  const said = [
    ...headers.map((text) => ({ by: 'the header' as const, named: zoneNamed(text) })),
    {
      by: 'the preamble' as const,
      named: preamble === null ? null : zoneNamed(withSummerTime(preamble, lines)),
    },
  ];
  for (const { by, named } of said) {
    if (named?.kind === 'offset')
      return { by, offset: named.offset, zone: offsetName(named.offset), findings: [] };
    if (named?.kind === 'zone') return { by, offset: null, zone: named.zone, findings: [] };
    if (named?.kind === 'changing') {
      if (changesSo(house, named, shown)) return { by, offset: null, zone: house, findings: [] };
      const finding = { code: 'zone-ambiguous', said: named.said, taken: house, where: { file } } as const;
      return { by: 'the house', offset: null, zone: house, findings: [finding] };
    }
  }
  const open =
    cells.map(ambiguousEnd).find((letters) => letters !== null) ??
    said
      .map(({ named }) => (named?.kind === 'ambiguous' ? named.said : undefined))
      .find((letters) => letters !== undefined) ??
    (preamble !== null && !LOCAL.test(preamble) ? preamble : null);
  const findings: LogFinding[] =
    open === null ? [] : [{ code: 'zone-ambiguous', said: open, taken: house, where: { file } }];
  return { by: 'the house', offset: null, zone: house, findings };
}

/** What the preamble says of the zone, and what it says of summer time on a line of its own. */
function withSummerTime(zone: string, lines: readonly string[]): string {
  const summer = lines.find((line) => saysSummerTime(line) && !line.includes(zone));
  return summer === undefined ? zone : `${zone}, ${summer}`;
}

/** Whether a zone goes over between two offsets [s] within a year of the record. */
function changesSo(
  zone: string,
  { winter, summer }: { readonly winter: number; readonly summer: number },
  shown: Float64Array,
): boolean {
  const { least, most } = extentOf(shown);
  if (!(least <= most)) return false;
  const { offset } = zoneBetween(zone, least - YEAR / 2, most + YEAR / 2);
  return offset.includes(winter) && offset.includes(summer);
}

const YEAR = 366 * 86400;

/** A preamble that says no more than that the clock is the house's own. */
const LOCAL = /\blo[ck]al|ortszeit|\bhora local|heure locale|ora locale|\bnone\b|\bdefault\b/i;

/** "CST" at the end of a time. */
function ambiguousEnd(cell: string): string | null {
  const letters = /\d\s*([A-Za-z]{3,5})$/.exec(cell)?.[1];
  return letters !== undefined && isAmbiguousZone(letters) ? letters : null;
}
