/** What is known of heated neighbours, and what has to be asked. */
import type { House } from '../house.ts';
import type { ElementDesign } from './element.ts';
import type { FabricFinding } from './finding.ts';
import { usualPlusMinus } from './fromHouse.ts';

/** A neighbour counts as known when a logger hangs there, or when its temperature is stated. */
export function neighbourFindings(
  { loggers, conditions }: House,
  elements: readonly ElementDesign[],
): FabricFinding[] {
  const next = elements.filter(({ to }) => to === 'adjacent');
  const logged = loggers.filter(({ place }) => place === 'adjacent').map((it) => it.element);
  const unlogged = next.filter(({ name }) => !logged.includes(name) && !logged.includes(undefined));
  const refused = next.filter((it) => it.toNeighbour === null);
  const findings: FabricFinding[] = [];
  if (refused.length > 0)
    findings.push({
      code: 'flow-to-neighbour-unknown',
      elements: refused.map((it) => it.name),
      where: { key: 'elements' },
    });
  if (unlogged.length === 0) return findings;
  if (conditions?.neighbour === undefined)
    findings.push({
      code: 'neighbour-unknown',
      elements: unlogged.map((it) => it.name),
      where: { key: 'conditions.neighbour' },
    });
  else if (conditions.neighbour.plusMinusK === undefined)
    findings.push({
      code: 'neighbour-range-assumed',
      plusMinus: usualPlusMinus,
      where: { key: 'conditions.neighbour.plusMinusK' },
    });
  return findings;
}
