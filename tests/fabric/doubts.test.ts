import { describe, expect, test } from 'vitest';
import type { BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { doubtsAbout } from '../../src/fabric/doubts.ts';
import { elementDesign } from '../../src/fabric/element.ts';
import type { DesignElement } from '../../src/house.ts';
import { say } from '../../src/words/index.ts';
import { air, bridge, solid, stated } from './walls.ts';

const doubts = (...layers: BuildUpLayer[]) => doubtsAbout({ facing: 'across', layers });

describe('a value that looks like a slip is taken, and questioned with what was likely meant', () => {
  // PRACTICE: no solid but metal conducts 10 W/(mK); insulation comes in millimetres, not in fractions of one.
  test.each([
    ['22 for 0.022 W/(mK)', solid(0.1, 22), 'conductivity-doubtful', 0.022, 'conductivityWmK'],
    ['0.000035 kW/(mK) for 0.035', solid(0.1, 0.000035), 'conductivity-doubtful', 0.035, 'conductivityWmK'],
    [
      '130 for timber of 500 kg/m³',
      solid(0.1, 130, 500, 1600),
      'conductivity-doubtful',
      0.13,
      'conductivityWmK',
    ],
    ['0.14 mm of insulation for 0.14 m', solid(0.14e-3, 0.035), 'thickness-doubtful', 0.14, 'thicknessMm'],
    ['0.2 mm of concrete for 0.2 m', solid(0.2e-3, 1.8), 'thickness-doubtful', 0.2, 'thicknessMm'],
    ['0.0125 mm of plasterboard', solid(0.0125e-3, 0.25), 'thickness-doubtful', 0.0125, 'thicknessMm'],
    ['0.025 mm of air', air(0.025e-3), 'thickness-doubtful', 0.025, 'thicknessMm'],
    ['a specific heat in kJ', solid(0.1, 0.25, 900, 1.0), 'specific-heat-doubtful', 1000, 'specificHeatJkgK'],
    ['a density in g/cm³', solid(0.1, 0.25, 0.9, 1000), 'density-doubtful', 900, 'densityKgM3'],
  ] as const)('%s', (_, layer, code, likely, key) => {
    const [found, ...rest] = doubts(solid(0.1, 0.5), layer);
    expect(rest).toEqual([]);
    expect(found).toMatchObject({ code, where: { key: `layers[1].${key}` } });
    if (!('likely' in found)) throw new Error('it says what was likely meant');
    expect(found.likely).toBeCloseTo(likely, 9);
    expect(say(found).text).toContain(String(likely));
  });
  test('density and specific heat changed over', () => {
    const found = doubts(solid(0.1, 0.038, 1030, 25));
    expect(found).toEqual([
      { code: 'mass-changed-over', density: 1030, specificHeat: 25, where: { key: 'layers[0].densityKgM3' } },
    ]);
  });
  test('a framed layer of 0.14 mm, whatever it is of', () => {
    expect(doubts(solid(0.14e-3, 0.25, null, null, bridge(0.1, 0.13)))).toHaveLength(1);
  });
  test('a timber of 130 W/(mK), at its own key', () => {
    const [found] = doubts(solid(0.1, 0.04, null, null, bridge(0.1, 130, 500, 1600)));
    expect(found).toMatchObject({
      code: 'conductivity-doubtful',
      where: { key: 'layers[0].bridge.conductivityWmK' },
    });
  });
});

test.each([
  // READ and MEMORY: published-checks section 8, ISO 10456; metals MEMORY.
  ['concrete', solid(0.2, 2, 2400, 1000)],
  ['mineral wool', solid(0.1, 0.038, 25, 1030)],
  ['timber', solid(0.1, 0.13, 500, 1600)],
  ['water', solid(0.1, 0.6, 1000, 4190)],
  ['a plastic membrane of 0.2 mm', solid(0.0002, 0.33, 920, 2200)],
  ['an aluminium foil', solid(0.00005, 160, 2700, 880)],
  ['a steel sheet of unknown density', solid(0.0007, 50)],
  ['steel', solid(0.02, 50, 7800, 450)],
  ['lead', solid(0.002, 35, 11300, 130)],
  ['a vacuum panel', solid(0.02, 0.007, 190, 800)],
  ['a membrane by its resistance', stated(0.01, 0.0002)],
] as const)('%s is not questioned', (_, layer) => {
  expect(doubts(layer)).toEqual([]);
});

const wool = { name: 'wool', thicknessMm: 140, conductivityWmK: 0.035 };
const onGround = (parts: Partial<DesignElement>): DesignElement => ({
  name: 'Floor',
  areaM2: 50,
  to: 'ground',
  perimeterM: 30,
  buildUp: { facing: 'down', layers: [wool] },
  ...parts,
});
const strip = { lies: 'flat', reachMm: 600, thicknessMm: 50, conductivityWmK: 0.035 } as const;
const stud = { name: 'studs', widthMm: 45, spacingMm: 600, conductivityWmK: 0.13 };
const framed = (parts: object) => ({ buildUp: { layers: [{ ...wool, bridge: { ...stud, ...parts } }] } });

describe('a length in metres where millimetres are wanted is questioned at its own key', () => {
  test.each<[string, Partial<DesignElement>, string, string]>([
    ['walls of 0.3', { wallThicknessMm: 0.3 }, 'wallThicknessMm', '300 mm'],
    [
      'a strip of 0.05',
      { edgeInsulation: { ...strip, thicknessMm: 0.05 } },
      'edgeInsulation.thicknessMm',
      '50 mm',
    ],
    ['a reach of 0.6', { edgeInsulation: { ...strip, reachMm: 0.6 } }, 'edgeInsulation.reachMm', '600 mm'],
    ['0.3 above the ground', { underfloor: { heightMm: 0.3 } }, 'underfloor.heightMm', '300 mm'],
    ['a stud of 0.045', framed({ widthMm: 0.045 }), 'buildUp.layers[0].bridge.widthMm', '45 mm'],
    [
      'centres of 0.6',
      framed({ widthMm: 0.5, spacingMm: 0.6 }),
      'buildUp.layers[0].bridge.spacingMm',
      '600 mm',
    ],
  ])('%s', (_, parts, key, likely) => {
    const found = elementDesign(onGround(parts), 0).findings.filter(
      ({ code, where }) => code === 'thickness-doubtful' && where.key === `elements[0].${key}`,
    );
    expect(found).toHaveLength(1);
    expect(say(found[0]).text).toContain(likely);
    expect(say(found[0]).remedy).toContain(`"${key.split('.').at(-1)}"`);
  });
  test('and not where they are in millimetres, or a floor lies at no height', () => {
    const right = [
      onGround({ wallThicknessMm: 300, edgeInsulation: strip }),
      onGround({ underfloor: { heightMm: 0 }, ...framed({}) }),
      onGround(framed({ name: 'steel channels', widthMm: 0.6, conductivityWmK: 50 })),
    ];
    expect(right.flatMap((it) => elementDesign(it, 0).findings.map(({ code }) => code))).not.toContain(
      'thickness-doubtful',
    );
  });
});
