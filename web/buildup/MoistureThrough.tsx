/** Where water condenses in the element through an example year, and whether it dries, by ISO 13788. */
import { useState } from 'preact/hooks';
import type { HumidityClass } from '../../src/air/index.ts';
import type { Message } from '../../src/assessment.ts';
import {
  type Beyond,
  exampleClimates,
  type MoistureMonth,
  type MoistureResult,
  moistureOf,
} from '../../src/fabric/index.ts';
import { say } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Table } from '../parts/Table.tsx';
import { Choice } from './Choice.tsx';
import { labelled, labels } from './labels.ts';
import type { BuildUpEntry } from './layerEdits.ts';

/** ISO 13788:2012, Annex A (MEMORY). */
const humidity = {
  '1': '1: stores of dry goods, nobody in them',
  '2': '2: homes and offices, aired as usual',
  '3': '3: homes of whose use nothing is known',
  '4': '4: kitchens, sports halls',
} as const;

const INSIDE = 20; // [°C]

export interface MoistureThroughProps {
  readonly entry: BuildUpEntry;
  readonly beyond: Beyond;
}

export function MoistureThrough({ entry, beyond }: MoistureThroughProps) {
  const [climate, setClimate] = useState<string>('0');
  const [wet, setWet] = useState<keyof typeof humidity>('2');
  const humidityClass = Number(wet) as HumidityClass;
  const result = moistureOf(
    entry,
    exampleClimates[Number(climate)],
    { kind: 'class', humidityClass, temperature: INSIDE },
    beyond,
  );
  return (
    <details class="buildup-more">
      <summary>Whether water condenses in it</summary>
      <div class="buildup-fields screen-only">
        <Choice
          label="A year outdoors like"
          value={climate}
          options={Object.fromEntries(exampleClimates.map(({ name }, i) => [`${i}`, name]))}
          onValue={setClimate}
        />
        <Choice
          label="Humidity inside, class of ISO 13788"
          hint={`At ${INSIDE} °C inside.`}
          value={wet}
          options={humidity}
          onValue={setWet}
        />
      </div>
      <p class="lesser small">
        Worked out for: {exampleClimates[Number(climate)].name}; class {humidity[wet]}.
      </p>
      <ProblemList problems={messagesOf(result)} />
      <Months result={result} entry={entry} />
    </details>
  );
}

/** Without their places, which the sentences name themselves; layers that say too little are told in one. */
function messagesOf({ findings }: MoistureResult): Message[] {
  const mute = findings.flatMap((it) => (it.code === 'vapour-resistance-missing' ? [it.name] : []));
  if (mute.length > 1)
    return [
      {
        code: 'vapour-resistance-missing',
        text: `Condensation was not worked out, because these layers do not say how they hold back vapour: ${mute.join('; ')}.`,
        remedy: `Give each its “${labels.vapourResistance}”, or pick its material from the library.`,
      },
    ];
  return findings.map(say).map(({ code, text, remedy }) => ({
    code,
    text: labelled(text),
    ...(remedy === undefined ? {} : { remedy: labelled(remedy) }),
  }));
}

/** The months in which it is wet; nothing where it never is. */
function Months({ result, entry }: { result: MoistureResult; entry: BuildUpEntry }) {
  if (!result.calculated) return null;
  const wet = result.months.filter(({ mass }) => mass.some((it) => it > 0));
  if (wet.length === 0) return null;
  const placeOf = (plane: number) => {
    const { inner, outer } = result.planes[plane];
    const [within, beyond] = [entry.layers[inner].name, entry.layers[outer].name];
    return inner === outer ? `within ${within}` : `${within} / ${beyond}`;
  };
  const placesOf = ({ mass }: MoistureMonth) => [
    ...new Set(mass.flatMap((it, plane) => (it > 0 ? [placeOf(plane)] : []))),
  ];
  return (
    <Table
      caption="Months with water in it, from the first"
      keyOf={({ month }) => month}
      columns={[
        { head: 'Month', cell: ({ month }) => monthNames.format(Date.UTC(2001, month)) },
        { head: 'Comes or goes', cell: ({ gained }) => grams(total(gained)), numeric: true },
        { head: 'Held at its end', cell: ({ mass }) => grams(total(mass)), numeric: true },
        { head: 'Where', cell: (month) => placesOf(month).join('; ') },
      ]}
      rows={wet}
    />
  );
}

const monthNames = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });
const total = (masses: readonly number[]) => masses.reduce((sum, it) => sum + it, 0);
const grams = (mass: number) =>
  `${mass < 0 ? '−' : ''}${Math.round(Math.abs(mass * 1000)).toLocaleString('en-GB')} g/m²`;
