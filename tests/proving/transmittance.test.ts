import { describe, expect, test } from 'vitest';
import { evenLayers, layersResistance, slabTransmittance, transmittance } from './transmittance.ts';

const layers = [
  { name: 'Board', thicknessMm: 12.5, conductivityWmK: 0.25 },
  {
    name: 'Wool between timber',
    thicknessMm: 100,
    conductivityWmK: 0.04,
    bridge: { name: 'Timber', fraction: 0.1, conductivityWmK: 0.13 },
  },
];

describe('transmittance', () => {
  test('lies between its upper and lower limit, as ISO 6946 combines them', () => {
    // COMPUTED by hand: paths 2.72 and 0.98923 m²K/W, so upper 1/(0.9/2.72 + 0.1/0.98923) = 2.31497;
    // layer 1/(0.9/2.5 + 0.1/0.76923) = 2.040816, so lower 2.260816; the mean of both is 2.287893.
    expect(transmittance(layers, 'across')).toBeCloseTo(1 / 2.287893, 6);
  });

  test('is kept when the bridged layers are made even', () => {
    expect(0.17 + layersResistance(evenLayers(layers, 'across'))).toBeCloseTo(2.287893, 6);
  });

  test('of a well-insulated slab on the ground falls with its width', () => {
    // COMPUTED by hand, 48 m² with 28 m of edge: width 3.428571 m, equivalent thickness
    // 0.3 + 1.5 (0.17 + 5 + 0.04) = 8.115 m, 1.5 / (0.457 * 3.428571 + 8.115) = 0.1549290.
    expect(slabTransmittance(5, 48, 28)).toBeCloseTo(0.154929, 7);
  });
});
