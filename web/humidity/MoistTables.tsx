/** Means of the air: of each logger over the record, and of one logger night by night. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { LoggerMoisture, MeanMoisture } from '../../server/api/loggerShapes.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { FormField } from '../parts/FormField.tsx';
import { type Column, Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { loggerNames } from './loggerNames.ts';

const one = (value: number | null) => (value === null ? 'not known' : figures.decimal(value, 1));

/** The unit beneath, so that figures need not be spread as wide as their heads. */
const headOf = (what: ComponentChildren, unit: string) => (
  <>
    {what},
    <br />
    {unit}
  </>
);

const columns: readonly Column<MeanMoisture>[] = [
  { head: headOf('Temperature', '°C'), cell: ({ temperatureC }) => one(temperatureC), numeric: true },
  {
    head: headOf(<Term of="relative humidity">Relative humidity</Term>, '%'),
    cell: ({ humidityPercent }) => figures.decimal(humidityPercent, 0),
    numeric: true,
  },
  {
    head: headOf(<Term of="absolute humidity">Absolute humidity</Term>, 'g/m³'),
    cell: ({ absoluteGM3 }) => one(absoluteGM3),
    numeric: true,
  },
  {
    head: headOf(<Term of="dew point">Dew point</Term>, '°C'),
    cell: ({ dewPointC }) => one(dewPointC),
    numeric: true,
  },
];
const over: Column<MeanMoisture> = {
  head: headOf('Over outdoors', 'g/m³'),
  cell: ({ excessGM3 }) => (excessGM3 === null ? '' : one(excessGM3)),
  numeric: true,
};

export function MeansOfLoggers({ loggers }: { loggers: readonly LoggerMoisture[] }) {
  const names = loggerNames(loggers);
  const rows = loggers.map(({ file, mean }, i) => ({ file, name: names[i], ...mean }));
  return (
    <Table
      caption="Means over all readings"
      rows={rows}
      keyOf={({ file }) => file}
      columns={[{ head: 'Logger', cell: ({ name }) => name }, ...columns, over]}
    />
  );
}

export function MeansOfNights({ loggers }: { loggers: readonly LoggerMoisture[] }) {
  const [chosen, setChosen] = useState(0);
  const names = loggerNames(loggers);
  const { place, nights } = loggers[chosen];
  return (
    <>
      <div class="screen-only">
        <FormField label="Logger">
          {(ties) => (
            <select
              {...ties}
              value={chosen}
              onChange={({ currentTarget: { value } }) => setChosen(Number(value))}
            >
              {names.map((name, i) => (
                <option key={name} value={i}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </FormField>
      </div>
      <Table
        caption={`${names[chosen]}: means from sunset to sunrise`}
        rows={nights}
        keyOf={({ date }) => date}
        columns={[
          { head: 'Night of', cell: ({ date }) => tied(figures.day(date)) },
          ...columns,
          ...(place === 'inside' ? [over] : []),
        ]}
      />
    </>
  );
}
