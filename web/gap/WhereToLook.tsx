/** Where to look first: what stands out, with what to mind on the way there; and all that was looked at. */
import type { StageResult } from '../../src/assessment.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { placesInBrief } from '../../src/words/inBrief.ts';
import { figures, whereToLookSentence } from '../../src/words/index.ts';
import { Caution } from '../parts/Caution.tsx';
import { ChartFrame } from '../parts/ChartFrame.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import { roomMarks } from './gapMarks.ts';
import { chanceAlone, figureOfPlace } from './gapWords.ts';

type Look = NonNullable<StageResult['whereToLook']>[number];

export function WhereToLook({ stage }: { readonly stage: StageResult }) {
  const { whereToLook: looks = [], whereToLookNotes = [] } = stage;
  const sentence = whereToLookSentence(stage);
  if (sentence === null) return null;
  const rooms = roomMarks(stage);
  return (
    <ChartFrame
      title="Where to look first"
      summary={tied(sentence)}
      table={() => <LooksTable looks={looks} />}
    >
      {looks.map((look, i) => (
        <Seen key={`${look.file} ${look.kind} ${i}`} look={look} />
      ))}
      {rooms.length === 0 ? null : (
        <>
          <p class="small lesser">
            Each room’s <Term of="time constant" /> over the house’s: left of 1 it cools faster than the rest.
          </p>
          <Rule title="Time constant of each room over the house’s" unit="ratio" marks={rooms} small />
        </>
      )}
      <ProblemList problems={whereToLookNotes} />
    </ChartFrame>
  );
}

/** A roof or loft is reached by a ladder: what is said of it is a caution. */
const isOverhead = ({ kind }: Look) => kind === 'void' || kind === 'void-moisture';

const Seen = ({ look }: { readonly look: Look }) => (
  <>
    {look.notes.map(({ code, text, remedy }) => (
      <div key={code}>
        <p>{tied(text)}</p>
        {remedy === undefined ? null : isOverhead(look) ? <Caution>{remedy}</Caution> : <p>{remedy}</p>}
      </div>
    ))}
  </>
);

const LooksTable = ({ looks }: { readonly looks: readonly Look[] }) => (
  <Table<Look>
    caption="All that was looked at, what chance explains least first; 95 % intervals"
    rows={looks}
    keyOf={({ file, kind, place }) => `${file} ${kind} ${place}`}
    columns={[
      { head: 'Place', cell: ({ place }) => place },
      { head: 'What', cell: ({ kind }) => placesInBrief[kind] },
      { head: 'Found', cell: figureOfPlace, numeric: true },
      {
        head: 'As drawn',
        cell: ({ expected }) => (expected === null ? 'not known' : figures.ratioBetween(expected)),
        numeric: true,
      },
      { head: 'By chance alone in', cell: ({ chance }) => chanceAlone(chance), numeric: true },
      {
        head: 'In wind, by chance in',
        cell: ({ inWind }) => (inWind === null ? '' : chanceAlone(inWind.chance)),
        numeric: true,
      },
    ]}
  />
);
