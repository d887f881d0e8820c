/** Measured beside the design: the cut through the house, element by element, and the whole with its interval. */
import { useRoute } from 'preact-iso';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Assessment } from '../../src/assessment.ts';
import { gapMarks, heatLossMarks } from '../../src/sheet/drawing/rules.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { answerSentence, stageAnswer, twoLossesSentence, widthSentence } from '../../src/words/answer.ts';
import { methodsInBrief } from '../../src/words/inBrief.ts';
import { figures } from '../../src/words/index.ts';
import { DrawBuildUps } from '../parts/DrawBuildUps.tsx';
import { FigureWithInterval } from '../parts/FigureWithInterval.tsx';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { MethodName } from '../parts/MethodName.tsx';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Section } from '../parts/Section.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';

export function Design() {
  const { id } = useRoute().params;
  return (
    <HouseFrame
      id={id}
      here="As drawn"
      foot={({ assessment }) =>
        assessment?.design === null ? (
          <DrawBuildUps house={id} />
        ) : (
          <p class="way screen-only">
            <a href={`/house/${id}/build-up`}>Change the build-ups</a>
          </p>
        )
      }
    >
      {(house, assessment) =>
        assessment.design === null ? (
          <NoDesign warnings={assessment.warnings} />
        ) : (
          <Beside house={house} assessment={assessment} design={assessment.design} />
        )
      }
    </HouseFrame>
  );
}

/** Either nothing is drawn, or something drawn was refused: then the reasons stand here. */
function NoDesign({ warnings }: { warnings: Assessment['warnings'] }) {
  const refused = warnings.filter(({ where }) => where?.key?.startsWith('elements'));
  return (
    <>
      <p class="answer">There is no design to set the measurement beside.</p>
      {refused.length > 0 ? (
        <ProblemList problems={refused} />
      ) : (
        <p>Give walls, roof, floor and windows, with their areas and their layers or U-values.</p>
      )}
    </>
  );
}

type TheDesign = NonNullable<Assessment['design']>;

function Beside({
  house,
  assessment,
  design,
}: {
  house: HouseDetail;
  assessment: Assessment;
  design: TheDesign;
}) {
  const stage = assessment.stages.at(-1);
  const width = stage === undefined ? null : widthSentence(stage);
  const both = twoLossesSentence(design);
  const others = stage?.estimates.filter(({ method }) => method !== stage.heatLossWK?.method) ?? [];
  return (
    <>
      {stage === undefined ? null : <p class="answer">{tied(answerSentence(stageAnswer(stage, design)))}</p>}
      {both === null ? null : <p>{tied(both)}</p>}
      <section>
        <h2>The whole house</h2>
        <Rule title="Heat loss, measured and drawn" unit="W/K" marks={heatLossMarks(assessment, others)} />
        {stage?.heatLossWK ? (
          <p>
            {stage.name}: <FigureWithInterval estimate={stage.heatLossWK} unit="W/K" />,{' '}
            <MethodName method={stage.heatLossWK.method} />.
          </p>
        ) : null}
        {width === null ? null : <p class="small lesser">{tied(width)}</p>}
        {others.map(({ method, heatLossWK }) => (
          <p key={method} class="small lesser">
            {methodsInBrief[method]}: <FigureWithInterval estimate={heatLossWK} unit="W/K" />,{' '}
            <MethodName method={method} />.
          </p>
        ))}
        <ProblemList
          problems={stage?.estimates.find(({ method }) => method === stage.heatLossWK?.method)?.notes ?? []}
        />
      </section>
      {gapMarks(assessment).length === 0 ? null : (
        <section>
          <h2>Measured over drawn</h2>
          <p>At 1 the house loses exactly what the drawing says; left of it less, right of it more.</p>
          <Rule title="Measured over drawn" unit="ratio" marks={gapMarks(assessment)} />
        </section>
      )}
      <section>
        <h2>Where the drawing lets heat out</h2>
        <Section
          elements={design.elements}
          designed={house.house.elements ?? []}
          loss={design.heatLossWK}
          loggers={house.house.loggers}
        />
      </section>
      <section>
        <h2>Element by element</h2>
        <Elements design={design} />
        <p class="small">
          Together: <Term of="ventilation" />, <Term of="thermal bridges" /> and the elements to outdoors and
          ground.
          {design.heatLossAsTestedWK === null ? null : (
            <>
              {' '}
              Two figures of it: <Term of="as drawn" />, in use, and <Term of="as tested" />, which the
              measurement is set beside.
            </>
          )}
        </p>
      </section>
      <Notes design={design} />
    </>
  );
}

interface Line {
  readonly name: string;
  readonly area: number | null;
  readonly transmittance: number | null;
  /** Null where it is not known. */
  readonly loss: number | null;
  readonly share: number | null;
}

function Elements({ design }: { design: TheDesign }) {
  const { elements, heatLossWK: whole, heatLossAsTestedWK: tested } = design;
  const line = (name: string, loss: number, share: number | null = loss / whole): Line => ({
    name,
    area: null,
    transmittance: null,
    loss,
    share,
  });
  return (
    <Table
      caption="The designed heat loss"
      keyOf={({ name }) => name}
      columns={[
        { head: 'Element', cell: ({ name }) => name },
        { head: 'Area', cell: ({ area }) => (area === null ? '' : figures.area(area)), numeric: true },
        {
          head: <Term of="U-value" />,
          cell: ({ area, transmittance }) => {
            if (transmittance !== null) return figures.transmittance(transmittance);
            return area === null ? '' : 'not known';
          },
          numeric: true,
        },
        {
          head: <Term of="heat loss">Heat loss</Term>,
          cell: ({ loss }) => (loss === null ? 'not known' : figures.heatLoss(loss)),
          numeric: true,
        },
        { head: 'Share', cell: ({ share }) => (share === null ? '' : figures.percent(share)), numeric: true },
      ]}
      rows={[
        ...elements.map(
          ({ name, areaM2, uValue, heatLossWK, to }): Line => ({
            name: to === 'outside' ? name : `${name} (to ${whereTo[to]})`,
            area: areaM2,
            transmittance: uValue,
            loss: heatLossWK,
            share: to === 'adjacent' || heatLossWK === null ? null : heatLossWK / whole,
          }),
        ),
        line('Thermal bridges', design.bridgesWK),
        line('Ventilation', design.ventilationWK),
      ]}
      foot={[
        ...(tested === null ? [] : [line('The whole house as tested, vents shut', tested, null)]),
        line(tested === null ? 'The whole house as drawn' : 'The whole house in use, vents open', whole),
      ]}
    />
  );
}

const whereTo = {
  ground: 'ground',
  adjacent: 'a heated neighbour, not counted',
  void: 'an unheated space',
} as const;

function Notes({ design }: { design: TheDesign }) {
  const notes = [...design.notes, ...design.elements.flatMap((element) => element.notes)];
  if (notes.length === 0) return null;
  return (
    <section>
      <h2>What was assumed</h2>
      <ProblemList problems={notes} />
    </section>
  );
}
