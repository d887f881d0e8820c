/** Edits of the walls and floors inside: both their faces are warm, and they store heat. */
import { bridgeOf, layerOf, materialNamed } from '../../src/fabric/index.ts';
import type { House, Layer, Partition } from '../../src/house.ts';
import { firstLayer } from './elementEdits.ts';

/** An inner wall or floor to begin from, in plain words. PRACTICE */
export interface PartitionPoint {
  readonly name: string;
  readonly partition: Omit<Partition, 'areaM2'>;
}

const FIRST_AREA = 10; // [m²]

const of = (material: string, thicknessMm: number) => layerOf(materialNamed(material), thicknessMm);

function timbered(layer: Layer, members: string, spacingMm: number): Layer {
  const softwood = materialNamed('softwood');
  if (softwood.kind !== 'solid') throw new RangeError('softwood is solid');
  return { ...layer, bridge: bridgeOf(softwood, { name: members, widthMm: 47, spacingMm }) };
}

export const partitionPoints: readonly PartitionPoint[] = [
  {
    name: 'Stud wall, boarded on both sides',
    partition: {
      name: 'Stud walls',
      buildUp: {
        facing: 'across',
        layers: [
          of('gypsum board', 12.5),
          timbered(of('still air space', 90), 'studs', 600),
          of('gypsum board', 12.5),
        ],
      },
    },
  },
  {
    name: 'Brick wall, plastered on both sides',
    partition: {
      name: 'Brick walls inside',
      buildUp: {
        facing: 'across',
        layers: [of('gypsum plaster', 13), of('brick, inner leaf', 103), of('gypsum plaster', 13)],
      },
    },
  },
  {
    name: 'Block wall, plastered on both sides',
    partition: {
      name: 'Block walls inside',
      buildUp: {
        facing: 'across',
        layers: [of('gypsum plaster', 13), of('dense concrete block', 100), of('gypsum plaster', 13)],
      },
    },
  },
  {
    name: 'Timber floor between storeys',
    partition: {
      name: 'Upper floor',
      buildUp: {
        facing: 'up',
        layers: [
          of('gypsum board', 12.5),
          timbered(of('still air space', 200), 'joists', 400),
          of('chipboard', 22),
        ],
      },
    },
  },
  {
    name: 'Concrete floor between storeys',
    partition: {
      name: 'Upper floor',
      buildUp: {
        facing: 'up',
        layers: [of('gypsum plaster', 13), of('concrete, dense', 180), of('cement screed', 50)],
      },
    },
  },
];

export function addPartition(house: House, { partition }: PartitionPoint): void {
  house.partitions = [...(house.partitions ?? []), { ...structuredClone(partition), areaM2: FIRST_AREA }];
}

export function removePartition(house: House, at: number): void {
  const rest = (house.partitions ?? []).filter((_, i) => i !== at);
  if (rest.length === 0) delete house.partitions;
  else house.partitions = rest;
}

/** A key that is undefined is left out from then on. */
export function changePartition({ partitions }: House, at: number, change: Partial<Partition>): void {
  const partition = partitions?.[at];
  if (partition !== undefined) Object.assign(partition, change);
}

/** The first of its layers. */
export function beginLayers({ partitions }: House, at: number): void {
  partitions?.[at]?.buildUp.layers.push(firstLayer());
}
