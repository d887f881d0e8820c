/** Build-ups to test with: short ways to write one, and generated ones. */
import fc from 'fast-check';
import type {
  AirLayer,
  BuildUpLayer,
  LayerBridge,
  SolidLayer,
  StatedLayer,
} from '../../src/fabric/buildUp.ts';
import type { Surfaces } from '../../src/fabric/surfaces.ts';

/** [m], [W/(mK)], [kg/m³], [J/(kgK)] */
export const solid = (
  thickness: number,
  conductivity: number,
  density: number | null = null,
  specificHeat: number | null = null,
  bridge: LayerBridge | null = null,
): SolidLayer => ({ kind: 'solid', name: 'layer', thickness, conductivity, density, specificHeat, bridge });

export const stated = (
  resistance: number,
  thickness: number | null = null,
  bridge: LayerBridge | null = null,
): StatedLayer => ({
  kind: 'stated',
  name: 'layer',
  resistance,
  thickness,
  density: null,
  specificHeat: null,
  bridge,
});

export const air = (
  thickness: number,
  ventilation: AirLayer['ventilation'] = 'unventilated',
  opening: number | null = null,
): AirLayer => ({ kind: 'air', name: 'air', thickness, ventilation, opening, bridge: null });

export const bridge = (
  fraction: number,
  conductivity: number,
  density: number | null = null,
  specificHeat: number | null = null,
): LayerBridge => ({ name: 'bridge', fraction, conductivity, density, specificHeat });

/** ISO 6946, horizontal flow, wall to outside [m²K/W]. */
export const wallSurfaces: Surfaces = { inside: 0.13, outside: 0.04 };

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** From insulation to concrete and timber, 5 to 300 mm. */
export const anySolid: fc.Arbitrary<SolidLayer> = fc
  .record({
    thickness: within(0.005, 0.3),
    conductivity: within(0.02, 2),
    density: within(15, 2400),
    specificHeat: within(700, 2100),
  })
  .map((it) => solid(it.thickness, it.conductivity, it.density, it.specificHeat));

export const anyBridged: fc.Arbitrary<SolidLayer> = fc
  .record({ layer: anySolid, fraction: within(0.01, 0.99), member: anySolid })
  .map(({ layer, fraction, member }) => ({
    ...layer,
    bridge: bridge(fraction, member.conductivity, member.density, member.specificHeat),
  }));

const anyAir = fc
  .record({
    thickness: within(0, 0.3),
    slightly: fc.boolean(),
    opening: fc.option(within(0, 2000e-6)),
  })
  .map((it): BuildUpLayer => air(it.thickness, it.slightly ? 'slightly' : 'unventilated', it.opening));

export const anySolids = fc.array(anySolid, { minLength: 1, maxLength: 4 });
export const anyLayers = fc.array<BuildUpLayer>(fc.oneof(anySolid, anyBridged, anyAir), {
  minLength: 1,
  maxLength: 5,
});

/** A figure that must be there. */
export function known(figure: number | null): number {
  if (figure === null) throw new Error('the figure is not known');
  return figure;
}
