/** A file as it may have been understood, for the tests of what the pages make of it. */
import type { Imported, Message, Quantity } from '../../../src/assessment.ts';

interface Besides {
  readonly logger?: string;
  readonly mean?: number;
  readonly notes?: readonly Message[];
  /** The first rows. */
  readonly cells?: readonly (readonly string[])[];
}

/** @param columns after the column of time, by their headers; null for one that is not read */
export function importedOf(
  file: string,
  columns: Readonly<Record<string, Quantity | null>>,
  { logger, mean = 15, notes = [], cells = [] }: Besides = {},
): Imported {
  const named = Object.entries(columns);
  return {
    file,
    rows: 100,
    readings: 100,
    rejected: 0,
    from: '2027-01-09T12:00:00+00:00',
    to: '2027-01-10T12:00:00+00:00',
    intervalS: 600,
    understood: {
      packed: null,
      encoding: 'utf-8',
      delimiter: ',',
      decimal: '.',
      headerLine: 1,
      preamble: { lines: [], serial: null, logger: logger ?? null, zone: null, intervalS: null },
      clock: {
        columns: ['Time'],
        written: 'date and time',
        order: null,
        orderBy: 'the text',
        zone: 'Europe/London',
        zoneBy: 'the house',
      },
      columns: [
        {
          column: 'Time',
          quantity: null,
          notRead: 'time',
          unit: null,
          unitStated: false,
          because: [],
          confidence: null,
        },
        ...named.map(([column, quantity]) => ({
          column,
          quantity,
          notRead: quantity === null ? ('unknown' as const) : null,
          unit: quantity === 'temperature' ? 'C' : null,
          unitStated: true,
          because: quantity === null ? [] : ['the header' as const],
          confidence: quantity === null ? null : ('likely' as const),
        })),
      ],
      sample: cells.map((row, i) => ({ line: i + 2, cells: [...row] })),
    },
    channels: named.flatMap(([column, quantity]) =>
      quantity === null
        ? []
        : [{ column, quantity, unit: 'C', readings: 100, doubted: 0, mean, min: mean - 2, max: mean + 2 }],
    ),
    notes: [...notes],
  };
}
