/** What is done between the stages: sealing, insulating, both or nothing; and so how the house was before. */
import { airChangesPerHour, type Leakage } from '../leakage.ts';
import type { Deviations, Plan } from '../plan.ts';
import { heatLoss } from '../truth.ts';
import { drawsOf } from './draws.ts';
import type { Site } from './sites.ts';

export interface Before {
  readonly built: Deviations;
  readonly leakage: Leakage;
}

const worst = 12; // times the conductivity: insulation that is hardly there

/**
 * The house before, such that after over before comes to a ratio between 0.5 and 1 at 12 K and the site's mean wind;
 * one in six is left as it was. What insulation alone cannot make up, leakage does, up to 2.5 air changes per hour.
 */
export function beforeThe(plan: Plan, after: Deviations, leakage: Leakage, site: Site, seed: number): Before {
  const draws = drawsOf(seed, 'change');
  if (draws.chance(1 / 6)) return { built: after, leakage };
  const usual = airChangesPerHour(leakage, 12, site.climate.meanWindSpeed);
  const now = heatLoss(plan, after, usual);
  const more = now.whole * (1 / draws.between(0.5, 0.97) - 1);
  const bySealing = draws.oneOf([0, 1, draws.between(0.2, 0.8)]);
  const built = worsened(plan, after, now.fabric + more * (1 - bySealing));
  const left = more - (heatLoss(plan, built, 0).fabric - now.fabric);
  const volume = plan.rooms.reduce((sum, room) => sum + room.volume, 0);
  const changes = Math.min(Math.max(2.5, usual), usual + left / (0.33 * volume));
  const scale = (changes / usual) ** (1 / (leakage.exponent ?? 0.5));
  return { built, leakage: { ...leakage, stack: leakage.stack * scale, wind: leakage.wind * scale } };
}

/** Insulation of one element after the other worse than later, until the fabric loses this much [W/K]. */
function worsened(plan: Plan, after: Deviations, wanted: number): Deviations {
  const names = plan.elements
    .filter(({ buildUp, to }) => buildUp && to !== 'adjacent')
    .map(({ name }) => name);
  const by = (factor: number): Deviations => ({
    ...after,
    insulation: {
      ...after.insulation,
      ...Object.fromEntries(names.map((name) => [name, (after.insulation[name] ?? 1) * factor])),
    },
  });
  let low = 1;
  let high = worst;
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if (heatLoss(plan, by(middle), 0).fabric < wanted) low = middle;
    else high = middle;
  }
  return by((low + high) / 2);
}
