import { expect, test } from 'vitest';
import { clearWidth, fittingOf, jointLoss } from '../../src/fabric/airGaps.ts';
import { cutTo, sayFitting, sayJoints } from '../../src/words/aboutAirGaps.ts';
import { aboutMoisture } from '../../src/words/aboutMoisture.ts';
import { solid, wallSurfaces } from './walls.ts';

const where = { key: 'layers' };
const at = { inner: 'mineral wool', outer: 'OSB' };

test('condensation that dries is told with its place, its most and its months', () => {
  const finding = { code: 'condensation-dries', mass: 0.1234, month: 1, dryMonth: 5, at, where } as const;
  expect(aboutMoisture['condensation-dries'](finding).text).toBe(
    'Water condenses between “mineral wool” and “OSB”: at most 123 g/m², at the end of February. It is dry again by the end of June.',
  );
});

test('condensation that stays is told with a remedy', () => {
  const finding = { code: 'condensation-stays', mass: 1.5, at, where } as const;
  const { text, remedy } = aboutMoisture['condensation-stays'](finding);
  expect(text).toContain('does not dry: 1,500 g/m² is left after a year');
  expect(remedy).toBeDefined();
});

test('a trace of water is not told as nothing', () => {
  const finding = { code: 'condensation-dries', mass: 1e-5, month: 0, dryMonth: 1, at, where } as const;
  expect(aboutMoisture['condensation-dries'](finding).text).toContain('less than 1 g/m²');
});

test('condensation within a layer names it once', () => {
  const inWool = { inner: 'mineral wool', outer: 'mineral wool' };
  const finding = { code: 'condensation-stays', mass: 1, at: inWool, where } as const;
  expect(aboutMoisture['condensation-stays'](finding).text).toContain('within “mineral wool”');
});

test('wet months of a surface are named in a row', () => {
  const finding = { code: 'surface-condensation', months: [11, 0, 1], where } as const;
  expect(aboutMoisture['surface-condensation'](finding).text).toContain('December, January and February');
});

test('a board is cut to the clear width between timbers', () => {
  expect(cutTo(clearWidth(0.046, 0.45), 0.046, 0.45)).toBe(
    'Cut to 404 mm: timbers 46 mm wide at 450 mm centres.',
  );
});

test('open joints are told with what they add, and as a simple model', () => {
  const wall = { facing: 'across', layers: [solid(0.1, 0.035)] } as const;
  const joints = { width: 0.01, spacing: 0.6 };
  const fitting = fittingOf(wall, wallSurfaces);
  const loss = jointLoss(wall, wallSurfaces, joints);
  if (fitting === null || loss === null) throw new Error('the wall has insulation');
  // COMPUTED in airGaps.test.ts: 0.33034 and 0.36102, which is 9 % more
  expect(sayJoints(joints, loss, fitting)).toBe(
    'Open joints of 10 mm every 600 mm: at least 0.36 W/(m²K), 9 % more heat lost. A simple model: still air in the joint; a draught through it is worse.',
  );
  // 0.36598 is 11 % more
  expect(sayFitting(fitting)).toEqual([
    'Fitted tight, with no gaps at the timbers: 0.33 W/(m²K).',
    'A few gaps that reach through the insulation add less than 3 %, which ISO 6946 leaves out.',
    'Gaps that let air move around the insulation: 0.37 W/(m²K), 11 % more heat lost.',
  ]);
});
