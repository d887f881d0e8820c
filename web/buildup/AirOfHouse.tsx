/** The warm space and its air: how big it is, how often its air changes, and the heat that leaves with it. */
import { divisorOf } from '../../src/fabric/index.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Term } from '../parts/Term.tsx';
import {
  type AirBy,
  airBy,
  changeAir,
  changeSize,
  divideBy,
  knowAirBy,
  type Ventilation,
} from './airEdits.ts';
import type { OfHouseProps } from './BridgesOfHouse.tsx';
import { Choice } from './Choice.tsx';
import { HouseFindings } from './HouseFindings.tsx';
import { hints } from './hints.ts';
import { LossWithRange } from './LossWithRange.tsx';
import { labels } from './labels.ts';
import { shelters } from './shelters.ts';
import { NumberField } from './TypedField.tsx';

const ways: Readonly<Record<AirBy, string>> = {
  nothing: 'Not at all: none is counted',
  changes: 'By air changes per hour',
  'pressure test': 'By a pressure test at 50 Pa',
};

const aboutWays: Readonly<Record<AirBy, string>> = {
  nothing: 'Every house loses heat with its air, so the loss as drawn is too low without it.',
  changes: 'What the design says, or a usual figure.',
  'pressure test': 'From the leakage under a fan to that of an everyday: a rule of thumb with a wide range.',
};

export function AirOfHouse({ editor, design, before, heading }: OfHouseProps) {
  const { ventilation, volumeM3 } = editor.house;
  const way = airBy(editor.house);
  const size = (key: 'floorAreaM2' | 'volumeM3') => (
    <NumberField
      label={labels[key]}
      hint={hints[key]}
      value={editor.house[key]}
      onValue={(value) => editor.type(key, (house) => changeSize(house, { [key]: value }))}
    />
  );
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        The warm space and its air
      </h2>
      <p>
        Through vents, fans and leaks heat leaves with the air: the <Term of="ventilation" />.
      </p>
      {design === null || ventilation === undefined ? null : (
        <LossWithRange
          lead="With its air goes"
          title="Lost with the air"
          range={design.ranges.ventilation}
          whole={design.heatLoss}
          kept={before?.ventilation ?? null}
        />
      )}
      {design?.heatLossAsTested == null ? null : (
        <p>
          {tied(
            `With vents shut and fans off, as in the test, the whole house loses ${figures.heatLoss(design.heatLossAsTested)} as drawn.`,
          )}
        </p>
      )}
      <div class="buildup-fields screen-only">
        {size('floorAreaM2')}
        {size('volumeM3')}
        {volumeM3 === undefined ? (
          <p class="small">Give the heated volume first, then how often its air changes.</p>
        ) : (
          <Choice
            label={labels.ventilation}
            hint={aboutWays[way]}
            value={way}
            options={ways}
            onValue={(wanted) => editor.act((house) => knowAirBy(house, wanted))}
          />
        )}
        {ventilation === undefined ? null : <AirFields editor={editor} ventilation={ventilation} />}
      </div>
      <HouseFindings design={design} about={['ventilation', 'floorAreaM2']} />
    </section>
  );
}

type FigureKey = keyof { [K in keyof Ventilation as K extends 'shelter' ? never : K]: true };

function AirFields({ editor, ventilation }: Pick<OfHouseProps, 'editor'> & { ventilation: Ventilation }) {
  const { airPermeability50, shelter, storeys, divisor } = ventilation;
  const figure = (key: FigureKey, hint = hints[key]) => (
    <NumberField
      label={labels[key]}
      hint={hint}
      value={ventilation[key]}
      onValue={(value) => editor.type(`ventilation ${key}`, (house) => changeAir(house, { [key]: value }))}
    />
  );
  return (
    <>
      {airPermeability50 === undefined ? (
        <>
          {figure('airChangesPerHour')}
          {figure('plusMinusPercent')}
        </>
      ) : (
        <>
          {figure('airPermeability50')}
          {divisor === undefined ? (
            <>
              <Choice
                label={labels.shelter}
                hint={hints.shelter}
                value={shelter ?? 'average'}
                options={shelters}
                onValue={(wanted) => editor.act((house) => changeAir(house, { shelter: wanted }))}
              />
              {figure('storeys')}
            </>
          ) : null}
          <NumberField
            label={labels.divisor}
            hint={`The leakage at 50 Pa over this is that of an everyday. Empty for ${Number(divisorOf(shelter, storeys).toFixed(1))}, by shelter and storeys.`}
            value={divisor}
            onValue={(value) => editor.type('ventilation divisor', (house) => divideBy(house, value))}
          />
          {divisor === undefined ? null : (
            <>
              {figure('divisorLow')}
              {figure('divisorHigh')}
            </>
          )}
        </>
      )}
      {figure('asTestedAirChangesPerHour')}
      {figure('heatRecovery')}
      {ventilation.heatRecovery === undefined ? null : figure('mechanicalAirChangesPerHour')}
    </>
  );
}
