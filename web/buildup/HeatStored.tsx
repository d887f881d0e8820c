/** What an element stores over a day, and how late the heat of the afternoon comes through. */
import type { PeriodicResponse } from '../../src/fabric/index.ts';
import { figures } from '../../src/words/index.ts';

export const HeatStored = ({ periodic }: { periodic: PeriodicResponse }) => (
  <details class="buildup-more">
    <summary>What it stores over a day</summary>
    <ul class="buildup-workings">
      <li>
        From inside {kilojoules(periodic.insideHeatCapacity)}, from outside{' '}
        {kilojoules(periodic.outsideHeatCapacity)} for each degree, by ISO 13786 over 24 hours.
      </li>
      <li>
        A swing of the outdoor temperature comes through {figures.decimal(periodic.timeShift / 3600, 1)} hours
        later, with {figures.percent(periodic.decrement)} of the heat that it would drive if it lasted
        (decrement factor {figures.ratio(periodic.decrement)}).
      </li>
    </ul>
  </details>
);

const kilojoules = (joules: number) => `${figures.decimal(joules / 1000, 0)} kJ/(m²K)`;
