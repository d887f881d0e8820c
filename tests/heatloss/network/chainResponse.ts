/** What a chain of cells passes over a period, worked out apart from the stepping: a ladder of complex conductances. */
import { add, type Complex, complex, divide, modulus, multiply } from '../../../src/fabric/complex.ts';
import type { Chain } from '../../../src/heatloss/network/cells.ts';

export interface ChainResponse {
  /** Heat into the inside face [W/(m²K)], of a swing of the air inside. */
  readonly inside: Complex;
  /** Heat out of the far face [W/(m²K)], of that swing; 0 where nothing lies beyond. */
  readonly through: Complex;
  /** κ1 [J/(m²K)] */
  readonly heatCapacity: number;
}

/** @param film resistance between the air inside and the face [m²K/W] */
export function chainResponse(chain: Chain, film: number, period = 86_400): ChainResponse {
  const { capacities, conductances, toInside, toBeyond } = chain;
  const turns = (2 * Math.PI) / period;
  const last = capacities.length - 1;
  // Seen from the last cell outward, then cell by cell inward: what each cell and all behind it takes up.
  const taken: Complex[] = [];
  taken[last] = complex(toBeyond, turns * capacities[last]);
  for (let j = last - 1; j >= 0; j--)
    taken[j] = add(complex(0, turns * capacities[j]), inSeries(conductances[j], taken[j + 1]));
  const first = 1 / (film + 1 / toInside);
  const inside = inSeries(first, taken[0]);
  // A divider at each cell gives its temperature.
  let temperature = divide(complex(first), add(complex(first), taken[0]));
  for (let j = 1; j <= last; j++)
    temperature = multiply(
      temperature,
      divide(complex(conductances[j - 1]), add(complex(conductances[j - 1]), taken[j])),
    );
  const through = multiply(complex(toBeyond), temperature);
  const stored = add(inside, multiply(complex(-1), through));
  return { inside, through, heatCapacity: modulus(stored) / turns };
}

const inSeries = (conductance: number, load: Complex): Complex =>
  divide(multiply(complex(conductance), load), add(complex(conductance), load));
