/** The combined method against conduction in two and three dimensions, and where it may not be used. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildUp, BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { periodicResponse } from '../../src/fabric/heatCapacity.ts';
import { sectionsOf } from '../../src/fabric/sections.ts';
import { transmittanceOf } from '../../src/fabric/transmittance.ts';
import { type Bridged, conductionResistance, type Member, type Slice } from './conduction.ts';
import { air, anySolid, bridge, solid, stated, wallSurfaces } from './walls.ts';

const across = (...layers: BuildUpLayer[]): BuildUp => ({ facing: 'across', layers });

/** [m], [W/(mK)] between the members, [W/(mK)] of the member if one runs there */
const slice = (
  thickness: number,
  conductivity: number,
  member?: number,
  runs: Member['runs'] = 'up',
): Slice => ({
  thickness,
  conductivity,
  member: member === undefined ? null : { conductivity: member, runs },
});

const framed = (slices: Slice[], width: number, spacing: number, inside = 0.13): Bridged => ({
  slices,
  up: { width, spacing },
  inside,
  outside: 0.04,
});

const combined = ({ slices, up, across: battens, inside, outside }: Bridged) =>
  transmittanceOf(
    across(
      ...slices.map(({ thickness, conductivity, member }) => {
        const { width, spacing } = member?.runs === 'across' && battens !== undefined ? battens : up;
        const through = member === null ? null : bridge(width / spacing, member.conductivity);
        return solid(thickness, conductivity, null, null, through);
      }),
    ),
    { inside, outside },
  );

describe('conduction', () => {
  test('without members is the sum of resistances', () => {
    const wall = framed([slice(0.1, 0.5), slice(0.1, 0.04)], 0.05, 0.6);
    // COMPUTED by hand: 0.13 + 0.2 + 2.5 + 0.04. The grid has no error where nothing bends.
    expect(conductionResistance(wall, 4)).toBeCloseTo(2.87, 7);
  });
  test('through members that conduct as their layer is the same, in three dimensions too', () => {
    const wall = framed([slice(0.05, 0.04, 0.04), slice(0.05, 0.04, 0.04, 'across')], 0.05, 0.6);
    expect(conductionResistance(wall, 4)).toBeCloseTo(2.67, 7);
    expect(conductionResistance({ ...wall, across: { width: 0.05, spacing: 0.4 } }, 4)).toBeCloseTo(2.67, 7);
  });
  test('in two dimensions is that in three where nothing varies along the third', () => {
    const wall = framed([slice(0.0125, 0.21), slice(0.1, 0.04, 0.13)], 0.05, 0.6);
    const deep = { ...wall, across: { width: 0.1, spacing: 0.4 } };
    expect(conductionResistance(deep, 6)).toBeCloseTo(conductionResistance(wall, 6), 7);
  });
});

describe.each([
  // PRACTICE: usual sizes and conductivities. The cavity of R 0.18 is a slice of 0.05/0.18.
  [
    'a timber-framed wall with a brick leaf',
    16,
    framed(
      [
        slice(0.0125, 0.21),
        slice(0.14, 0.035, 0.13),
        slice(0.009, 0.13),
        slice(0.05, 0.05 / 0.18),
        slice(0.102, 0.77),
      ],
      0.038,
      0.4,
    ),
  ],
  [
    'a roof with boards under its rafters',
    16,
    framed(
      [slice(0.0125, 0.21), slice(0.03, 0.022), slice(0.15, 0.035, 0.13), slice(0.018, 0.13)],
      0.047,
      0.6,
      0.1,
    ),
  ],
  [
    'a wall of aerated blocks in mortar, insulated outside',
    16,
    framed([slice(0.013, 0.57), slice(0.215, 0.15, 0.88), slice(0.06, 0.035), slice(0.006, 1)], 0.01, 0.225),
  ],
  [
    'a roof with battens that cross its rafters, in three dimensions',
    8,
    {
      ...framed(
        [
          slice(0.0125, 0.21),
          slice(0.06, 0.035, 0.13, 'across'),
          slice(0.15, 0.035, 0.13),
          slice(0.018, 0.13),
        ],
        0.047,
        0.6,
        0.1,
      ),
      across: { width: 0.06, spacing: 0.4 },
    },
  ],
] as const)('%s', (_, fineness, wall) => {
  const exact = conductionResistance(wall, fineness);
  const { upper, lower, resistance, relativeError } = combined(wall);
  test('is told by conduction to well within what is looked for', () => {
    expect(Math.abs(conductionResistance(wall, fineness / 2) / exact - 1)).toBeLessThan(0.004);
  });
  test('has its conduction between the two limits', () => {
    expect(exact).toBeGreaterThan(lower);
    expect(exact).toBeLessThan(upper);
  });
  test("has a resistance by the combined method within the method's own error of it", () => {
    expect(Math.abs(exact - resistance) / resistance).toBeLessThan(relativeError);
  });
});

describe('members that continue from one layer to the next', () => {
  const studs = bridge(0.1, 0.13, 500, 1600);
  const goOn = { ...studs, continues: true };
  test('stand behind each other: two sections, not four', () => {
    const layers = [solid(0.1, 0.04, null, null, studs), solid(0.05, 0.02, null, null, goOn)];
    const { cases, findings } = transmittanceOf(across(...layers), wallSurfaces);
    // COMPUTED by hand: 0.17 + 2.5 + 2.5 and 0.17 + 0.15/0.13
    const [clear, stud] = cases[0].sections;
    expect([clear.fraction, clear.resistance]).toEqual([expect.closeTo(0.9, 12), expect.closeTo(5.17, 12)]);
    expect([stud.fraction, stud.resistance]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(1.323846, 6)]);
    expect(findings).toEqual([]);
  });
  test('make a bridged layer the same when it is split in two', () => {
    fc.assert(
      fc.property(
        anySolid,
        anySolid,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (layer, member, part) => {
          const by = (thickness: number, continues: boolean) => ({
            ...layer,
            thickness,
            bridge: { ...bridge(0.15, member.conductivity, member.density, member.specificHeat), continues },
          });
          const { thickness } = layer;
          const whole = across(by(thickness, false));
          const split = across(by(thickness * part, false), by(thickness * (1 - part), true));
          const [one, two] = [whole, split].map((it) => transmittanceOf(it, wallSurfaces));
          expect(Math.abs(two.upper / one.upper - 1)).toBeLessThan(1e-9);
          expect(Math.abs(two.lower / one.lower - 1)).toBeLessThan(1e-9);
          const [stored, storedToo] = [whole, split].map(
            (it) => periodicResponse(it, wallSurfaces).insideHeatCapacity,
          );
          expect(Math.abs(storedToo / stored - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });
  test('may be slimmer further out: the web of a beam stands within its flange', () => {
    const layers = [
      solid(0.04, 0.04, null, null, bridge(0.15, 0.13)),
      solid(0.2, 0.04, null, null, { ...bridge(0.03, 0.13), continues: true }),
    ];
    const sections = sectionsOf(layers, 'across');
    expect(sections.map((it) => it.fraction.toFixed(2))).toEqual(['0.85', '0.12', '0.03']);
    expect(sections.map((it) => it.parts.map((part) => part.bridge))).toEqual([
      [false, false],
      [true, false],
      [true, true],
    ]);
  });
  test('cross the battens of a layer of their own', () => {
    const layers = [
      solid(0.05, 0.04, null, null, bridge(0.2, 0.13)),
      solid(0.1, 0.04, null, null, studs),
      solid(0.05, 0.04, null, null, goOn),
    ];
    const { cases, findings } = transmittanceOf(across(...layers), wallSurfaces);
    // COMPUTED by hand: 0.8 / 0.2 times 0.9 / 0.1
    expect(cases[0].sections.map((it) => it.fraction.toFixed(2)).sort()).toEqual([
      '0.02',
      '0.08',
      '0.18',
      '0.72',
    ]);
    expect(findings).toEqual([{ code: 'bridges-cross', count: 2, where: { key: 'layers' } }]);
  });
});

describe('the method is refused', () => {
  const refused = (...layers: BuildUpLayer[]) => transmittanceOf(across(...layers), wallSurfaces);
  test('where metal bridges insulation, with the limits shown all the same', () => {
    // COMPUTED by hand: paths 0.17 + 0.1/0.04 = 2.67 and 0.17 + 0.1/50 = 0.172, so
    // R′ = 1/(0.99/2.67 + 0.01/0.172) = 2.33140; layer 1/(0.99/2.5 + 0.01/0.002) = 0.18532, R″ = 0.35532;
    // ratio 6.5614
    const result = refused(solid(0.1, 0.04, null, null, bridge(0.01, 50)));
    expect(result.transmittance).toBeNull();
    expect(result.upper).toBeCloseTo(2.3314, 5);
    expect(result.lower).toBeCloseTo(0.35532, 5);
    expect(result.refusals).toEqual([
      {
        code: 'metal-bridges-insulation',
        name: 'bridge',
        conductivity: 50,
        where: { key: 'layers[0].bridge' },
      },
      {
        code: 'combined-method-out-of-range',
        ratio: expect.closeTo(6.5614, 4),
        limit: 1.5,
        where: { key: 'layers' },
      },
    ]);
    expect(result.findings).toEqual(result.refusals);
  });
  test('for metal even where the limits lie close together, and through a stated resistance', () => {
    const thin = refused(solid(0.01, 0.09, null, null, bridge(0.0001, 17)), stated(3));
    expect(thin.upper / thin.lower).toBeLessThan(1.5);
    expect(thin.refusals.map((it) => it.code)).toEqual(['metal-bridges-insulation']);
    expect(refused(stated(2.5, 0.1, bridge(0.0001, 50)), stated(9)).transmittance).toBeNull();
  });
  test('not for metal across an air space or through a block, where nothing insulates', () => {
    const space = { ...air(0.05), bridge: bridge(0.0005, 17) };
    expect(refused(space, solid(0.1, 0.04)).refusals).toEqual([]);
    expect(refused(solid(0.1, 1.1, null, null, bridge(0.0005, 50)), stated(2)).refusals).toEqual([]);
  });
  test('where the limits differ by more than half, whatever the members are of', () => {
    // COMPUTED by hand: paths 0.17 + 10 and 0.17 + 0.2/2 = 0.27: R′ = 1/(0.8/10.17 + 0.2/0.27) = 1.22022;
    // layer 1/(0.8/10 + 0.2/0.1) = 0.480769, R″ = 0.650769; ratio 1.87505
    const { refusals } = refused(solid(0.2, 0.02, null, null, bridge(0.2, 2)));
    expect(refusals).toEqual([
      {
        code: 'combined-method-out-of-range',
        ratio: expect.closeTo(1.875, 3),
        limit: 1.5,
        where: { key: 'layers' },
      },
    ]);
  });
  test('from a ratio of 1.5 on: 1.49 is told, 1.51 is not', () => {
    // COMPUTED in another language: R′ = 1/(0.8/2.67 + 0.2/(0.17 + 0.1/m)) and R″ = 0.17 + 1/(0.32 + 2·m) are 1.49 apart
    // at m = 0.815062 and 1.51 apart at m = 0.847818 W/(mK).
    const framedIn = (member: number) => refused(solid(0.1, 0.04, null, null, bridge(0.2, member)));
    expect(framedIn(0.815062).refusals).toEqual([]);
    expect(framedIn(0.847818).refusals).toMatchObject([{ ratio: expect.closeTo(1.51, 5) }]);
  });
  test('not outside a well ventilated space, where nothing counts', () => {
    const metal = solid(0.1, 0.04, null, null, bridge(0.01, 50));
    expect(refused(solid(0.1, 0.04), air(0.025, 'ventilated'), metal).refusals).toEqual([]);
  });
});
