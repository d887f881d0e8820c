/** Roofs, and the ceiling under a cold loft. From inside to outside. */
import { air, between, of, type StartingPoint, sheet } from './parts.ts';

export const startingPointsRoofs: readonly StartingPoint[] = [
  {
    name: 'Pitched roof, insulated between and under the rafters',
    about: 'Board between the rafters with an air way above it, more board under them, tiles.',
    element: {
      name: 'Pitched roof',
      airGapLevel: 1,
      buildUp: {
        facing: 'up',
        layers: [
          of('gypsum board', 12.5),
          of('PIR board, foil-faced', 50),
          between('rafters', 47, 450, of('PIR board, foil-faced', 100)),
          air('ventilated', 50),
          of('clay roof tile', 15),
        ],
      },
    },
  },
  {
    name: 'Pitched roof, full of mineral wool',
    about: 'Wool to the full depth of the rafters, a vapour check inside, a breather membrane outside.',
    element: {
      name: 'Pitched roof',
      airGapLevel: 0,
      buildUp: {
        facing: 'up',
        layers: [
          of('gypsum board', 12.5),
          sheet('vapour check'),
          between('rafters', 47, 600, of('mineral wool, 0.035', 200)),
          sheet('breather membrane'),
          air('ventilated', 25),
          of('clay roof tile', 15),
        ],
      },
    },
  },
  {
    name: 'Pitched roof, insulated over the rafters',
    about: 'A warm roof: boards in one sheet over the rafters, which stay visible inside.',
    element: {
      name: 'Pitched roof',
      buildUp: {
        facing: 'up',
        layers: [
          of('softwood', 20),
          sheet('vapour check'),
          of('PIR board, foil-faced', 120),
          sheet('breather membrane'),
          air('ventilated', 50),
          of('clay roof tile', 15),
        ],
      },
    },
  },
  {
    name: 'Flat roof, insulated over the deck',
    about: 'A warm flat roof: deck, vapour barrier, board insulation, felt.',
    element: {
      name: 'Flat roof',
      buildUp: {
        facing: 'up',
        layers: [
          of('gypsum board', 12.5),
          between('joists', 47, 400, air('still', 200)),
          of('OSB', 18),
          sheet('polyethylene sheet, 0.25 mm'),
          of('PIR board, foil-faced', 130),
          of('bitumen felt', 5),
        ],
      },
    },
  },
  {
    name: 'Ceiling under a cold loft',
    about: 'Wool between the joists and across them; the loft above is cold and aired.',
    element: {
      name: 'Loft ceiling',
      to: 'void',
      buildUp: {
        facing: 'up',
        layers: [
          of('gypsum board', 12.5),
          between('joists', 47, 600, of('mineral wool quilt', 100)),
          of('mineral wool quilt', 200),
        ],
      },
    },
  },
];
