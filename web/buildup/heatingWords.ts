/** The house as a whole in sentences: for each m², over a day, a cold day and a year. */
import {
  type Design,
  designHeatLoad,
  heatDemand,
  standardYear,
  statedNeighbour,
} from '../../src/fabric/index.ts';
import type { House } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';

/**
 * Each with its doubt and with what it rests on.
 *
 * @param inside  on the cold day [°C]
 * @param outside [°C]
 */
export function heatingOf(design: Design, house: House, inside: number, outside: number): string[] {
  const { meanTransmittance, exposedArea, heatCapacity, heatCapacitySd, timeConstant, ranges } = design;
  const neighbour = statedNeighbour(house);
  const load = designHeatLoad(design, {
    insideTemperature: inside,
    outsideTemperature: outside,
    ...(neighbour === null ? {} : { neighbour }),
  });
  const { degreeDays, baseTemperature } = standardYear;
  const year = (heatLoss: number) => figures.energy(heatDemand(heatLoss, standardYear));
  const sentences: string[] = [];
  if (meanTransmittance !== null)
    sentences.push(
      `Its mean U-value is ${figures.transmittance(meanTransmittance)}, over ${figures.area(exposedArea)} with what goes where they meet, and without the air.`,
    );
  if (heatCapacity !== null && heatCapacitySd !== null)
    sentences.push(
      `It stores ${figures.decimal(heatCapacity / 1000, 0)} kJ/K (give or take ${figures.percent(heatCapacitySd)})${timeConstant === null ? '' : `, so its time constant as drawn is ${figures.hours(timeConstant / 3600)}`}.`,
    );
  if (load !== null)
    sentences.push(
      `At ${inside} °C inside and ${outside} °C outside it needs ${figures.power(load.value)} (${figures.power(load.low)} to ${figures.power(load.high)}), with nothing for heating up again and nothing off for sun and people.`,
    );
  if (ranges.heatLoss !== null)
    sentences.push(
      `In a standard year of the United Kingdom, ${degreeDays} K·day below ${baseTemperature} °C, it needs ${year(ranges.heatLoss.value)} (${year(ranges.heatLoss.low)} to ${year(ranges.heatLoss.high)}), before what a boiler or heat pump loses itself.`,
    );
  return sentences;
}
