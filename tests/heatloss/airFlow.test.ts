/** How much air carries water off, and how it is told. */
import { describe, expect, test } from 'vitest';
import { airFlowOf } from '../../src/heatloss/airFlow.ts';
import type { House } from '../../src/house.ts';
import { say } from '../../src/words/index.ts';
import { house } from './meteredHouse.ts';

/** A change of 240 m³ an hour, [m³/s]. */
const CHANGE = 240 / 3600;
const flowOf = (ventilation: House['ventilation'], extra: Partial<House> = {}) =>
  airFlowOf(house({ volumeM3: 240, ...(ventilation && { ventilation }), ...extra }), null);

describe('the air that a house exchanges', () => {
  test('is the stated air change, and heat recovery takes nothing from it', () => {
    // COMPUTED by hand: 0.5 · 240 m³ / 3600 s
    expect(flowOf({ airChangesPerHour: 0.5 })?.flow).toBeCloseTo(0.5 * CHANGE, 9);
    expect(flowOf({ airChangesPerHour: 0.5, heatRecovery: 0.85 })?.flow).toBeCloseTo(0.5 * CHANGE, 9);
    const unit = { airChangesPerHour: 0.1, mechanicalAirChangesPerHour: 0.4, heatRecovery: 0.85 };
    expect(flowOf(unit)?.flow).toBeCloseTo(0.5 * CHANGE, 9);
  });

  test('is that of the test while the vents were shut, and not while they stood open', () => {
    const tested = { airChangesPerHour: 0.5, asTestedAirChangesPerHour: 0.2 };
    expect(flowOf(tested)?.flow).toBeCloseTo(0.2 * CHANGE, 9);
    expect(flowOf(tested, { conditions: { ventsClosed: false } })?.flow).toBeCloseTo(0.5 * CHANGE, 9);
  });

  test('is an ordinary one where none is stated, and that is told', () => {
    const flow = flowOf(undefined);
    expect(flow?.flow).toBeCloseTo(0.3 * CHANGE, 9);
    expect([flow?.assumed, flowOf({ airChangesPerHour: 0.5 })?.assumed]).toEqual([true, false]);
  });

  test('of a house of unknown size is not known', () => {
    expect(airFlowOf(house(), null)).toBeNull();
  });
});

describe('the sentence about the water', () => {
  const said = (litres: number, assumedAir = false) =>
    say({
      code: 'vapour-excess',
      density: 0.004,
      rate: litres / 86_400,
      heat: 100,
      unusual: true,
      told: true,
      assumedAir,
    }).text;

  test('counts litres as people do', () => {
    expect([said(6.6), said(1.2), said(0.3)]).toEqual([
      expect.stringContaining('about 7 litres a day'),
      expect.stringContaining('about 1 litre a day'),
      expect.stringContaining('less than a litre a day'),
    ]);
  });

  test('calls an air change drawn only where one was', () => {
    expect(said(6)).toContain('the air change as drawn');
    expect(said(6, true)).not.toContain('as drawn');
    expect(said(6, true)).toContain('none is stated');
  });
});
