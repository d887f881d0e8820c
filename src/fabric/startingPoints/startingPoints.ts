/**
 * Common build-ups to start from, in plain words: to be changed to what stands on site. PRACTICE throughout.
 */
import { startingPointsFloors } from './floors.ts';
import type { StartingPoint } from './parts.ts';
import { startingPointsRoofs } from './roofs.ts';
import { startingPointsWalls } from './walls.ts';

export const startingPoints: readonly StartingPoint[] = [
  ...startingPointsRoofs,
  ...startingPointsWalls,
  ...startingPointsFloors,
  {
    name: 'Window, double glazing',
    about: 'Two panes with a coating and gas between, in a timber or plastic frame.',
    element: { name: 'Window', uValue: 1.4, gValue: 0.6 },
  },
  {
    name: 'Window, triple glazing',
    about: 'Three panes with two coatings and gas between, in an insulated frame.',
    element: { name: 'Window', uValue: 0.9, gValue: 0.5 },
  },
  {
    name: 'Outside door',
    about: 'An insulated leaf in a frame with seals, little glass.',
    element: { name: 'Door', uValue: 1.3 },
  },
];
