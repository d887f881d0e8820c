/** The gap and the stages in a real browser: the figures are the JSON's, every state can be read, reached and heard. */
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Assessment } from '../../src/assessment.ts';
import { figures, gapSentence } from '../../src/words/index.ts';
import { atHand } from './atHand.ts';
import { axeViolations } from './axeViolations.ts';
import { plainHouse } from './plainHouse.ts';

const { server, browser, demonstration: id, end } = await atHand();
afterAll(end);
let page: Page;
beforeEach(async () => {
  page = await browser.newPage({ locale: 'en-GB' });
});
afterEach(() => page.close());

const detail = async (of = id) =>
  (await (await fetch(`${server.address}/api/houses/${of}`)).json()) as HouseDetail;
const assessment = assessed(await detail());

function assessed({ assessment: it }: HouseDetail): Assessment {
  if (it === null) throw new Error('the demonstration house is not assessed');
  return it;
}

async function open(path: string, of = id) {
  await page.goto(`${server.address}/house/${of}/${path}`, { waitUntil: 'networkidle' });
  await page.getByRole('heading', { level: 2 }).first().waitFor();
}

/** Without the ties between figures and their units. */
const plain = (text: string | null) => (text ?? '').replaceAll('\u00a0', ' ');
const words = async () => plain(await page.getByRole('main').textContent());
const drawn = (name: RegExp) => page.getByRole('img', { name });
const spoken = async (name: RegExp) => plain(await drawn(name).getAttribute('aria-label'));

/** The levels of all headings as they are heard. */
const levels = () =>
  page.evaluate(() =>
    [...document.querySelectorAll('h1, h2, h3, h4')]
      .filter((it) => it.checkVisibility())
      .map((it) => Number(it.tagName[1])),
  );

/** Every control that is not in a folded part is reached by Tab, one after the other. */
async function expectReachedByKeyboard() {
  const controls = await page.evaluate(() => {
    const all = [...document.querySelectorAll('a[href], button, input, select, summary, [tabindex="0"]')];
    return all.filter((it) => it.checkVisibility() && !it.matches(':disabled')).length;
  });
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  const reached = new Set<string>();
  // A date field has several stops of its own.
  for (let i = 0; i < controls + 60; i++) {
    await page.keyboard.press('Tab');
    reached.add(
      await page.evaluate(() =>
        String([...document.querySelectorAll('*')].indexOf(document.activeElement ?? document.body)),
      ),
    );
  }
  reached.delete(
    await page.evaluate(() => String([...document.querySelectorAll('*')].indexOf(document.body))),
  );
  expect(reached.size).toBeGreaterThanOrEqual(controls);
}

function expectInOrder(seen: readonly number[]) {
  expect(seen[0]).toBe(1);
  seen.slice(1).forEach((level, i) => {
    expect(level - seen[i], `heading ${i + 2} of ${seen}`).toBeLessThanOrEqual(1);
  });
}

describe('the gap', () => {
  test('shows the last stage first, with the figures of the JSON', async () => {
    await open('gap');
    const stage = assessment.stages.at(-1);
    const { design } = assessment;
    if (!stage?.gap || !stage.heatLossWK || !design?.heatLossAsTestedWK || !design.ranges.heatLossAsTestedWK)
      throw new Error('the demonstration house has no gap');
    const whole = await spoken(/^Heat loss of the whole house/);
    expect(whole).toContain(`Measured: ${figures.heatLossBetween(stage.heatLossWK)}`);
    expect(whole).toContain(`As drawn, vents shut: ${figures.heatLoss(design.heatLossAsTestedWK)}`);
    expect(whole).toContain(`Range as drawn: ${figures.heatLossBetween(design.ranges.heatLossAsTestedWK)}`);
    const told = await words();
    expect(told).toContain(figures.ratioBetween(stage.gap.ratio));
    expect(told).toContain(gapSentence(stage.gap));
    for (const { text } of stage.gap.notes ?? []) expect(told).toContain(text);
    for (const { share } of stage.doubts ?? [])
      if (share >= 0.05) expect(told).toContain(figures.percent(share));
    for (const { name, uValueAlone, couldExplainPercent } of stage.gap.elements ?? []) {
      if (uValueAlone !== null)
        expect(await spoken(new RegExp(`^U-value of ${name}`))).toContain(figures.ratioBetween(uValueAlone));
      for (const { text } of couldExplainPercent) expect(told).toContain(text);
    }
    const ways = await spoken(/^Heat loss by each way/);
    for (const { heatLossWK } of stage.estimates) expect(ways).toContain(figures.heatLossBetween(heatLossWK));
    for (const { ratio, text } of stage.furtherTests ?? []) {
      expect(await spoken(/^Measured over drawn, today/)).toContain(figures.ratioBetween(ratio));
      expect(told).toContain(text);
    }
    for (const { text } of [...(stage.agreement?.notes ?? []), ...(stage.whereToLookNotes ?? [])])
      expect(told).toContain(text);
  });

  test('has the figures of each drawing in a table behind it', async () => {
    await open('gap');
    const buttons = page.getByRole('button', { name: 'Show as table' });
    for (let left = await buttons.count(); left > 0; left--) await buttons.first().click();
    const tables = await page.getByRole('table').allInnerTexts();
    const stage = assessment.stages.at(-1);
    for (const { heatLossWK } of stage?.estimates ?? [])
      expect(tables.join('\n')).toContain(figures.heatLossBetween(heatLossWK));
    for (const { name } of stage?.gap?.elements ?? []) expect(tables.join('\n')).toContain(name);
    expect(await axeViolations(page)).toEqual([]);
  });

  test('goes from stage to stage by their names, and one that is not complete says so', async () => {
    await open('gap');
    await page.getByRole('link', { name: 'Before closing' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('The house was not complete in this stage').waitFor();
    const before = assessment.stages[0];
    if (before.heatLossWK === null) throw new Error('the first stage has no heat loss');
    expect(await spoken(/^Heat loss of the whole house/)).toContain(
      figures.heatLossBetween(before.heatLossWK),
    );
    expect(await page.getByRole('heading', { name: 'Element by element' }).count()).toBe(0);
    await page.goBack();
    await page.getByRole('heading', { name: 'Element by element' }).waitFor();
  });

  test('is clean by axe-core, its headings in order, reached by the keyboard, and no wider than a phone', async () => {
    await page.setViewportSize({ width: 360, height: 800 });
    await open('gap');
    expect(await axeViolations(page)).toEqual([]);
    expectInOrder(await levels());
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await expectReachedByKeyboard();
  });

  /** The demonstration house with another last stage, or another design. */
  async function openWith(change: (it: Assessment) => void) {
    const house = await detail();
    change(assessed(house));
    await page.route(`**/api/houses/${id}`, (route) => route.fulfill({ json: house }));
    await open('gap');
  }

  test('tells a weak spot under the roof with what to mind there, and what surface loggers say', async () => {
    const remedy = 'On site, from inside: the hatch. Mind the ladder, and tread on joists only.';
    await openWith(({ stages }) => {
      const stage = stages[1];
      stage.whereToLook = [
        {
          place: 'Roof space',
          file: 'roof-void.csv',
          kind: 'void',
          index: { value: 0.3, low: 0.25, high: 0.35 },
          expected: { value: 0.05, low: 0, high: 0.1 },
          inWind: null,
          chance: 0.001,
          notes: [{ code: 'look-void-warm', text: 'The “Roof space” is warmer than drawn.', remedy }],
        },
      ];
      stage.surfaces = [
        {
          logger: 'wall.csv',
          room: 'Bedroom',
          element: 'External walls',
          uValueWM2K: { value: 0.3, low: 0.22, high: 0.38 },
          accepted: false,
          designUValue: 0.22,
          notes: [{ code: 'surface-rule-duration', text: 'One night or day only.' }],
        },
      ];
    });
    expect(await page.getByRole('note').filter({ hasText: 'Mind the ladder' }).textContent()).toContain(
      remedy,
    );
    expect(await words()).toContain('The first place to look is “Roof space”');
    expect(await spoken(/^U-value where wall\.csv sits/)).toContain('Not accepted: 0.22 to 0.38 (0.30)');
    expect(await axeViolations(page)).toEqual([]);
    expectInOrder(await levels());
  });

  test('ranks several tests, and names the one that would narrow it most', async () => {
    const test = { moreNights: null, powerW: null, durationH: null, warmestC: null };
    const ratio = (low: number, high: number) => ({ value: 1.1, low, high });
    await openWith(({ stages }) => {
      stages[1].furtherTests = [
        {
          ...test,
          test: 'metered-week',
          ratio: ratio(0.99, 1.21),
          chanceToDecide: 0.5,
          text: 'a metered week',
        },
        { ...test, test: 'wind-logged', ratio: ratio(1.02, 1.18), chanceToDecide: 0.3, text: 'wind logged' },
      ];
    });
    expect(await words()).toContain('this would narrow it most: wind logged.');
    const rows = page.getByRole('table', { name: /What each test would leave/ }).getByRole('rowheader');
    expect(await rows.allInnerTexts()).toEqual(['Metered week', 'Wind logged']);
    expect(await page.getByRole('note').filter({ hasText: 'Electric heat only' }).count()).toBe(1);
  });

  test('says why shell and air are not told apart, and what is missing where there is no design', async () => {
    const why = 'Leakage and fabric cannot be told apart here: no wind was logged.';
    await openWith(({ stages }) => {
      stages[1].apart = null;
      stages[1].notes = [{ code: 'apart-no-wind', text: why }];
    });
    expect(await words()).toContain(why);
    await page.unrouteAll();
    await openWith((it) => {
      it.design = null;
      it.stages[1].gap = null;
      it.stages[1].next = [
        { code: 'next-give-design', text: 'Without the design there is nothing to set it beside.' },
      ];
    });
    expect(await words()).toContain('Without the design there is nothing to set it beside.');
    expect(await drawn(/^Heat loss of the whole house/).count()).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
  });
});

describe('the stages', () => {
  test('are set beside each other with the figures of the JSON', async () => {
    await open('stages');
    const [it] = assessment.comparisons;
    if (
      !it.heatLossRatio ||
      !it.heatLossDifferenceWK ||
      !it.airChangesPerHour ||
      !it.weather ||
      !it.degreeDays
    )
      throw new Error('the demonstration house has no comparison');
    expect(await spoken(/^After closing over Before closing/)).toContain(
      figures.ratioBetween(it.heatLossRatio),
    );
    expect(await spoken(/^Heat loss, After closing less/)).toContain(
      figures.heatLossBetween(it.heatLossDifferenceWK),
    );
    const table = async (name: RegExp) => plain(await page.getByRole('table', { name }).textContent());
    const change = await table(/^The change/);
    expect(change).toContain(figures.ratioBetween(it.airChangesPerHour));
    expect(change).toContain(`${it.degreeDays.kelvinDays} K·day below ${it.degreeDays.baseC} °C`);
    const weather = await table(/means over the hours/);
    for (const { nights, meanOutdoorC, meanDifferenceK } of Object.values(it.weather)) {
      expect(weather).toContain(String(nights));
      if (meanOutdoorC !== null) expect(weather).toContain(figures.temperature(meanOutdoorC));
      if (meanDifferenceK !== null) expect(weather).toContain(figures.kelvins(meanDifferenceK));
    }
    const plan = await table(/^Nights on each side/);
    for (const { changePercent, nights } of it.nightsToShow ?? []) {
      expect(plan).toContain(figures.percent(changePercent / 100));
      if (nights !== null) expect(plan).toContain(String(nights));
    }
    expect(await words()).toContain(
      `a fall of ${figures.percent((it.smallestChangePercent ?? 0) / 100)} or more`,
    );
    expect(await table(/^What each stage came to/)).toContain('Before closing (house not complete)');
  });

  test('are clean by axe-core, headings in order, reached by the keyboard, no wider than a phone', async () => {
    await page.setViewportSize({ width: 360, height: 800 });
    await open('stages');
    expect(await axeViolations(page)).toEqual([]);
    expectInOrder(await levels());
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await expectReachedByKeyboard();
  });

  const done = (what: string) => page.getByText(`${what}. The house is assessed again.`).waitFor(SOON);

  test('are moved by their dates, added with a name, and removed; each step is taken back', async () => {
    const plain = await server.bring(plainHouse);
    const stored = async () => (await detail(plain)).house.stages;
    const before = await stored();
    await open('stages', plain);
    await page.getByLabel('To', { exact: true }).first().fill('2027-01-24T08:00');
    await page.getByRole('button', { name: 'Move “Before closing”', exact: true }).click();
    await done('Kept: “Before closing” moved');
    expect((await stored())?.[0].to).toBe('2027-01-24T08:00');
    await page.getByRole('button', { name: 'Take this back' }).click();
    await done('Taken back: “Before closing” moved');
    expect(await stored()).toEqual(before);

    await page.getByText('Add a stage').click();
    await page.getByRole('button', { name: 'Add this stage' }).click();
    expect(await page.getByLabel('Its name').getAttribute('aria-invalid')).toBe('true');
    await page.getByLabel('Its name').fill('Between');
    await page.getByLabel('From', { exact: true }).last().fill('2027-01-25T12:00');
    await page.getByLabel('To', { exact: true }).last().fill('2027-01-28T08:00');
    await page.getByLabel('The house was complete in it').uncheck();
    await page.getByRole('button', { name: 'Add this stage' }).click();
    await done('Kept: “Between” added');
    const added = { name: 'Between', from: '2027-01-25T12:00', to: '2027-01-28T08:00', complete: false };
    expect((await stored())?.[1]).toEqual(added);
    await page.getByRole('button', { name: 'Remove “Between”' }).click();
    await done('Kept: “Between” removed');
    expect(await stored()).toEqual(before);
    await page.getByRole('button', { name: 'Take this back' }).click();
    await done('Taken back: “Between” removed');
    expect((await stored())?.[1]).toEqual(added);
  });
});

/** An assessment waits its turn where the machine has other work. */
const SOON = { timeout: 120_000 };
