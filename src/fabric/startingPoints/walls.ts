/** Outside walls and partitions. From inside to outside. */
import { air, between, of, type StartingPoint, sheet } from './parts.ts';

export const startingPointsWalls: readonly StartingPoint[] = [
  {
    name: 'Cavity wall, cavity full of wool',
    about: 'Aerated block inside, 100 mm of wool, facing brick outside.',
    element: {
      name: 'Cavity wall',
      fasteners: { perM2: 2.5, areaMm2: 12.5, conductivityWmK: 17 },
      buildUp: {
        layers: [
          of('gypsum plaster, light', 13),
          of('aerated concrete block', 100),
          of('mineral wool, 0.032', 100),
          of('brick, outer leaf', 102),
        ],
      },
    },
  },
  {
    name: 'Cavity wall, empty',
    about: 'Two leaves of brick with 50 mm of air between, as built from about 1930 to 1975.',
    element: {
      name: 'Cavity wall',
      buildUp: {
        layers: [
          of('gypsum plaster', 13),
          of('brick, inner leaf', 102),
          air('still', 50),
          of('brick, outer leaf', 102),
        ],
      },
    },
  },
  {
    name: 'Timber-frame wall',
    about: 'Wool between studs, a board outside, a ventilated cladding before it.',
    element: {
      name: 'Timber-frame wall',
      buildUp: {
        layers: [
          of('gypsum board', 12.5),
          sheet('vapour check'),
          // PRACTICE: 47 mm studs at 600 mm are 0.078; plates and noggins bring it to the usual 0.15.
          between('studs', 47, 600, of('mineral wool, 0.035', 140), 0.072),
          of('OSB', 9),
          sheet('breather membrane'),
          air('ventilated', 25),
          of('softwood', 20),
        ],
      },
    },
  },
  {
    name: 'Old brick wall, bare',
    about: 'One brick thick, plastered inside, nothing added.',
    element: {
      name: 'Brick wall',
      buildUp: { layers: [of('lime plaster', 15), of('brick, outer leaf', 220)] },
    },
  },
  {
    name: 'Solid wall, insulated outside',
    about: 'Brick with boards and a thin render outside.',
    element: {
      name: 'Brick wall',
      buildUp: {
        layers: [
          of('lime plaster', 15),
          of('brick, inner leaf', 220),
          of('EPS, graphite', 100),
          of('thin render on insulation', 6),
        ],
      },
    },
  },
  {
    name: 'Solid wall, insulated inside',
    about: 'Brick with wood fibre and clay plaster inside, open to vapour: look at its moisture.',
    element: {
      name: 'Brick wall',
      buildUp: {
        layers: [
          of('clay plaster', 15),
          of('wood fibre board', 60),
          of('lime plaster', 15),
          of('brick, outer leaf', 220),
        ],
      },
    },
  },
  {
    name: 'Partition of studs',
    about: 'Boards on both sides of wool, to a neighbouring heated room.',
    element: {
      name: 'Partition',
      to: 'adjacent',
      buildUp: {
        layers: [
          of('gypsum board', 12.5),
          between('studs', 38, 600, of('mineral wool batt', 75)),
          of('gypsum board', 12.5),
        ],
      },
    },
  },
];
