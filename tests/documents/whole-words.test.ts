import { afterAll, describe, expect, it } from 'vitest';
import { createManual } from '../../src/documents/manual/manual.js';
import type { QuickMode } from '../../src/documents/manual/quick.js';
import { layOutQuick } from '../../src/documents/manual/quick-layout.js';
import { manualMargins } from '../../src/documents/page/furniture.js';
import { papers } from '../../src/documents/page/paper.js';
import { launchBrowser, type PrintBrowser } from '../../src/print/launch.js';
import { type SmallRow, smallText } from '../support/small-scheme.js';
import { browserTool } from '../support/tools.js';
import { findCutWords } from './cut-words.js';
import { EVERYTHING } from './everything-scheme.js';
import { inputOf, withGame } from './inputs.js';

let browser: PrintBrowser | undefined;

const openPage = async () => {
  browser ??= await launchBrowser(await browserTool(), 110_000);
  return browser.openPage();
};

afterAll(() => browser?.close());

/** Long words on both sides: three columns of an A5 page are too narrow for them. */
const LONG: readonly SmallRow[] = ['Stellwerk', 'Funkraum', 'Fahrplan', 'Wartesaal'].flatMap((mode, at) =>
  [
    ['Zurückblättern', 'key 0', 'release'],
    ['Funkspruch', 'key 5', 'double tap within 0.5 s'],
    ['Signalwiederholung', 'key 7', 'held'],
  ].map(([action = '', control = '', gesture = '']) => ({
    mode,
    action: `${action} ${at}`,
    control,
    gesture,
  })),
);
const LONG_TEXT = smallText(LONG, {
  game: { Language: 'de', 'Manual page': 'A5' },
  seats: ['Solo | 1 | keypad | empty'],
});

describe('at a glance', () => {
  it('cuts no word on paper', async () => {
    const page = await openPage();
    await page.emulateMediaType('print');
    const { inner, outer } = manualMargins.A5;
    const width = Math.round(((papers.A5.widthMm - inner - outer) * 96) / 25.4);
    await page.setViewport({ width, height: 1000 });
    for (const text of [LONG_TEXT, withGame(EVERYTHING, { Language: 'de' })]) {
      await page.setContent(createManual(inputOf(text)).html, { waitUntil: 'load' });
      expect(await findCutWords(page, 'table.quick')).toEqual([]);
    }
    await page.close();
  });

  const mode = (name: string, control: string, action: string, count: number): QuickMode => ({
    name,
    isPlay: true,
    lines: Array.from({ length: count }, () => ({ control, action })),
  });
  const area = { width: 116, height: 150 };

  it('gives a long word on one side the room that the other does not need', () => {
    const narrow = { width: 65, height: 150 };
    const { column, isComplete } = layOutQuick(
      [mode('A', 'SELECT', 'Unterwasserschleusenwärter', 3)],
      narrow,
    );
    expect(isComplete).toBe(true);
    expect(column.controlWidth / column.width).toBeLessThan(0.46);
    const usual = layOutQuick([mode('A', 'SELECT', 'Wait', 3)], narrow).column;
    expect(usual.controlWidth / usual.width).toBeCloseTo(0.46);
  });

  it('cuts a word before it leaves anything out', () => {
    const { column, isComplete } = layOutQuick([mode('A', 'x'.repeat(80), 'y'.repeat(80), 3)], area);
    expect(isComplete).toBe(true);
    expect(column.controlWidth / column.width).toBeCloseTo(0.46);
  });

  it('leaves out what no type fits', () => {
    expect(layOutQuick([mode('A', 'SELECT', 'Wait', 400)], area).isComplete).toBe(false);
  });
});

describe('a screen 380 px wide', () => {
  it.each(['en', 'de', 'fr'])('cuts no word of a table (%s)', async language => {
    const page = await openPage();
    await page.emulateMediaType('screen');
    await page.setViewport({ width: 380, height: 800 });
    for (const text of [EVERYTHING, LONG_TEXT]) {
      await page.setContent(createManual(inputOf(withGame(text, { Language: language }))).html, {
        waitUntil: 'load',
      });
      expect(await findCutWords(page, 'table')).toEqual([]);
      const isWide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
      expect(isWide).toBe(false);
    }
    await page.close();
  });
});

it('a cut word is seen', async () => {
  const page = await openPage();
  await page.setContent(
    '<table style="table-layout:fixed;width:60px;overflow-wrap:anywhere"><tr><td>Zurückblättern oder so-und-so</td></tr></table>',
  );
  expect(await findCutWords(page, 'table')).toEqual(['Zurückblättern']);
  await page.close();
});
