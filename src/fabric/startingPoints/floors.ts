/** Ground floors. From inside to outside. */
import { between, of, type StartingPoint, sheet } from './parts.ts';

export const startingPointsFloors: readonly StartingPoint[] = [
  {
    name: 'Slab on the ground, insulated',
    about: 'Screed on board insulation on a concrete slab; give the outside perimeter of the floor.',
    element: {
      name: 'Ground floor',
      to: 'ground',
      buildUp: {
        facing: 'down',
        layers: [
          of('cement screed', 65),
          of('PIR board, foil-faced', 100),
          sheet('polyethylene sheet, 0.25 mm'),
          of('concrete, dense', 150),
        ],
      },
    },
  },
  {
    name: 'Suspended timber floor, insulated between joists',
    about:
      'Boards on joists with wool between, over an aired crawl space; give the outside perimeter of the floor.',
    element: {
      name: 'Ground floor',
      to: 'ground',
      underfloor: {},
      buildUp: {
        facing: 'down',
        layers: [
          of('softwood', 20),
          between('joists', 47, 400, of('mineral wool, 0.035', 150)),
          sheet('breather membrane'),
        ],
      },
    },
  },
];
