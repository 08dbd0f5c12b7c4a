import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { createTryout } from '../../src/documents/tryout/tryout.js';
import { traceScheme } from '../../src/handoff/trace/trace.js';
import { inputOf, SCHEMES, withGame } from '../documents/inputs.js';
import { browserTool } from '../support/tools.js';
import { untilThere } from '../support/until.js';
import { launchWatched } from '../trust/watched-browser.js';

const folder = mkdtempSync(join(tmpdir(), 'leverleaf-tryout-'));
let shared: Browser | undefined;
const faults: string[] = [];

beforeAll(() => {
  for (const name of ['kiln-yard', 'night-exchange', 'everything', 'crowded', 'longest, joystick']) {
    const text = (SCHEMES[name] as () => string)();
    writeFileSync(join(folder, `${name}.html`), createTryout(inputOf(text)).content);
  }
  for (const language of ['de', 'fr']) {
    const text = withGame((SCHEMES['kiln-yard'] as () => string)(), { Language: language });
    writeFileSync(join(folder, `kiln-yard ${language}.html`), createTryout(inputOf(text)).content);
  }
});

afterAll(async () => {
  await shared?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(name: string, prepare: (page: Page) => Promise<unknown> = async () => {}): Promise<Page> {
  shared ??= await launchWatched(await browserTool());
  const page = await shared.newPage();
  faults.length = 0;
  page.on('pageerror', error => faults.push(String(error)));
  page.on('console', message => faults.push(message.text()));
  await page.setViewport({ width: 1280, height: 900 });
  await prepare(page);
  await page.goto(pathToFileURL(join(folder, `${name}.html`)).href);
  return page;
}

const text = (page: Page, name: string) =>
  page.$eval(`[data-part="${name}"]`, element => element.textContent ?? '');

/** Waits until a part of the page says so. */
async function waitFor(page: Page, name: string, words: string): Promise<void> {
  await page
    .waitForFunction(
      (part, wanted) => document.querySelector(`[data-part="${part}"]`)?.textContent?.includes(wanted),
      { timeout: 30_000 },
      name,
      words,
    )
    .catch(async () => expect(await text(page, name)).toContain(words));
}

/** `SWCHA` as eight bits, D7 first. */
const bits = (page: Page, register: string) =>
  page.$$eval(
    '[data-part="registers"] tbody tr',
    (rows, wanted) =>
      rows
        .filter(row => row.querySelector('th')?.textContent?.startsWith(wanted))
        .flatMap(row => [...row.querySelectorAll('b')].map(bit => bit.textContent))
        .join(''),
    register,
  );

async function waitForBits(page: Page, register: string, wanted: string): Promise<void> {
  await vi.waitFor(async () => expect(await bits(page, register)).toBe(wanted), {
    timeout: 30_000,
    interval: 20,
  });
}

async function middleOf(page: Page, selector: string) {
  const box = await (await page.waitForSelector(selector, { visible: true }))?.boundingBox();
  if (!box) throw new Error(`nothing to be seen of ${selector}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the try-out page is worked', () => {
  it('with the keyboard: what is pressed fires, and the mode and the registers follow', async () => {
    const page = await open('kiln-yard');
    expect(await text(page, 'mode')).toBe('Order book');
    await page.keyboard.press('r', { delay: 60 });
    await waitFor(page, 'mode', 'Yard');
    await waitFor(page, 'fires', 'Light the kiln');
    await page.keyboard.down('Space');
    await waitForBits(page, 'INPT4', '00000000');
    await waitFor(page, 'fires', 'Lift (Left player)');
    await page.keyboard.up('Space');
    await waitFor(page, 'fires', 'Set down (Left player)');
    await page.keyboard.down('w');
    await page.keyboard.down('d');
    await waitForBits(page, 'SWCHA', '01101111');
    expect(faults).toEqual([]);
    await page.close();
  });

  it('with a pointer: the stick is pushed to a corner, a switch is moved', async () => {
    const page = await open('kiln-yard');
    const stick = await middleOf(page, '.art:not([hidden]) [data-stick="left"]');
    await page.mouse.move(stick.x, stick.y);
    await page.mouse.down();
    await page.mouse.move(stick.x - 40, stick.y + 40, { steps: 3 });
    await waitForBits(page, 'SWCHA', '10011111');
    await page.mouse.move(stick.x - 60, stick.y, { steps: 3 });
    await waitForBits(page, 'SWCHA', '10111111');
    await page.mouse.up();
    await waitForBits(page, 'SWCHA', '11111111');
    const lever = await middleOf(page, '.art:not([hidden]) [data-contact="left difficulty"]');
    await page.mouse.click(lever.x, lever.y);
    await waitFor(page, 'settings', 'fierce');
    await waitForBits(page, 'SWCHB', '01001011');
    await page.close();
  });

  it('with two fingers at once', async () => {
    const page = await open('kiln-yard', each =>
      each.setViewport({ width: 1280, height: 900, hasTouch: true }),
    );
    await page.select('select[name="seats"]', '1');
    const [left, right] = await Promise.all(
      ['left', 'right'].map(port => middleOf(page, `.art:not([hidden]) [data-contact="${port} button"]`)),
    );
    if (left === undefined || right === undefined) throw new Error('no buttons');
    const first = await page.touchscreen.touchStart(left.x, left.y);
    const second = await page.touchscreen.touchStart(right.x, right.y);
    await waitForBits(page, 'INPT4', '00000000');
    await waitForBits(page, 'INPT5', '00000000');
    await first.end();
    await waitForBits(page, 'INPT4', '10000000');
    await second.end();
    await waitForBits(page, 'INPT5', '10000000');
    await page.close();
  });

  it('with a gamepad of the standard layout', async () => {
    // W3C, Gamepad, “Remapping”: buttons 0 to 16, 12 is up, 9 the right one in the centre; axes 0 and 1 the left stick.
    const page = await open('kiln-yard', each =>
      each.evaluateOnNewDocument(() => {
        const pad = { id: 'pad', connected: true, axes: [0, 0, 0, 0], buttons: [] as { pressed: boolean }[] };
        pad.buttons = Array.from({ length: 17 }, () => ({ pressed: false }));
        Object.assign(window, { pad });
        navigator.getGamepads = () => [pad as unknown as Gamepad, null, null, null];
      }),
    );
    const press = (button: number, pressed: boolean) =>
      page.evaluate(
        (number, is) => {
          const { pad } = window as unknown as { pad: { buttons: { pressed: boolean }[] } };
          pad.buttons[number] = { pressed: is };
        },
        button,
        pressed,
      );
    await press(9, true);
    await waitFor(page, 'mode', 'Yard');
    await press(9, false);
    await press(12, true);
    await press(0, true);
    await waitForBits(page, 'SWCHA', '11101111');
    await waitForBits(page, 'INPT4', '00000000');
    expect(await text(page, 'pads')).toContain('Gamepad 1: Left port');
    await page.close();
  });

  it('with nothing but Tab, Space and Enter', async () => {
    const page = await open('kiln-yard');
    await page.focus('button[data-contact="RESET"]');
    await page.keyboard.down('Enter');
    await waitForBits(page, 'SWCHB', '00001010');
    await page.keyboard.up('Enter');
    await waitFor(page, 'mode', 'Yard');
    await page.focus('button[data-contact="TV type"]');
    await page.keyboard.press('Space');
    await waitFor(page, 'settings', 'grey');
    await page.close();
  });

  it('with knobs, keys and what a designer has made', async () => {
    const page = await open('everything');
    await page.select('select[name="seats"]', '1');
    const knob = await middleOf(page, '.art:not([hidden]) [data-contact="left A paddle"]');
    await page.mouse.move(knob.x, knob.y - 20);
    await page.mouse.down();
    await page.mouse.move(knob.x + 20, knob.y, { steps: 6 });
    await page.mouse.up();
    // A quarter turn of 330 degrees over 380 lines, from the middle.
    const lines = 190 - Math.round((90 * 380) / 330);
    await page.waitForFunction(
      wanted => {
        const shown = document.querySelector('[data-lines="left A paddle"]')?.textContent ?? '';
        return Math.abs(Number.parseInt(shown, 10) - wanted) <= 1;
      },
      { timeout: 30_000 },
      lines,
    );
    await page.select('select[name="seats"]', '2');
    await page.keyboard.down('s');
    const keys = () =>
      page.$$eval('[data-part="keypads"] .engaged', found => found.map(each => each.textContent));
    await page.waitForFunction(() => document.querySelector('[data-part="keypads"] .engaged') !== null);
    expect(await keys()).toEqual(['0left: Key 8']);
    await page.select('select[name="seats"]', '3');
    await page.keyboard.down('Space');
    await waitForBits(page, 'INPT4', '00000000');
    expect(faults).toEqual([]);
    await page.close();
  });
});

describe('the try-out page', () => {
  it('takes the switches away that a console has not, and shows what each setting then is', async () => {
    const page = await open('kiln-yard');
    const difficulty = () => page.$$eval('button[data-contact$="difficulty"]', found => found.length);
    expect(await difficulty()).toBe(2);
    await page.select('select[name="console"]', '2');
    expect(await difficulty()).toBe(0);
    expect(await text(page, 'settings')).toMatch(/Left fire\s*steady\s*kept by the game/);
    expect(await page.$$eval('.panel .wide:not([hidden]) .switch', found => found.length)).toBe(3);
    await page.close();
  });

  it.each([
    {
      language: 'de',
      name: 'Probierseite',
      port: 'Linker Anschluss: Joystick',
      since: 'seit dem Einschalten',
      fired: 'SELECT, drücken oder halten (alle 0,7\u00a0s) → Schaltet Order weiter.',
      offered: 'Führt zu Yard.',
      chip: 'Linker Schwierigkeitsschalter: B',
      bit: 'links: Stick nach oben',
    },
    {
      language: 'fr',
      name: 'Page d’essai',
      port: 'Prise de gauche\u00a0: manette à manche',
      since: 'depuis l’allumage',
      fired: 'SELECT, appuyez ou maintenez (toutes les 0,7\u00a0s) → Fait avancer Order.',
      offered: 'Mène à Yard.',
      chip: 'Sélecteur de difficulté gauche\u00a0: B',
      bit: 'gauche\u00a0: Manche vers le haut',
    },
  ])('speaks the language of the scheme: $language', async said => {
    const { language, name, port, since } = said;
    const page = await open(`kiln-yard ${language}`);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
    expect(await page.title()).toContain(name);
    expect(await page.$eval('[data-title="left"]', each => each.textContent)).toBe(port);
    await waitFor(page, 'session', since);
    await page.keyboard.press('t', { delay: 60 });
    await waitFor(page, 'fires', said.fired);
    const words = await page.$$eval('body > :not(script)', all =>
      all.map(each => each.textContent).join(' '),
    );
    for (const each of [said.offered, said.chip, said.bit]) expect(words).toContain(each);
    // Keys of phrases that the page was not given, and the words of the scheme's own tables.
    expect(words).not.toMatch(/\b(?:try|short|label|steps|panel) [a-z]/);
    expect(words).not.toMatch(
      /: next|go to |left difficulty|TV type|stick (?:up|down|left|right)|six-switch/,
    );
    expect(faults).toEqual([]);
    await page.close();
  });

  it('says below each key of a keypad what its overlay says in the mode', async () => {
    const page = await open('night-exchange');
    const label = (key: string) =>
      page.$eval(`.art:not([hidden]) [data-short="left key ${key}"]`, each => each.textContent);
    await page.keyboard.press('r', { delay: 60 });
    await waitFor(page, 'mode', 'Board');
    expect([await label('2'), await label('star')]).toEqual(['DOCTOR', 'PULL PLUG / CLEAR ALL']);
    await page.keyboard.press('t', { delay: 60 });
    await waitFor(page, 'mode', 'Cocoa');
    expect(await label('2')).toBe('');
    await page.close();
  });

  it('waits where it is stopped, and makes one read at a time', async () => {
    const page = await open('kiln-yard');
    await page.select('select[name="speed"]', '0');
    const reads = async () => Number(/([\d,]+) reads?/.exec(await text(page, 'session'))?.[1]);
    const before = await reads();
    await new Promise(resolve => setTimeout(resolve, 100));
    expect(await reads()).toBe(before);
    await page.click('[data-do="step"]');
    await page.waitForFunction(
      wanted => document.querySelector('[data-part="session"]')?.textContent?.includes(`${wanted} read`),
      { timeout: 30_000 },
      before + 1,
    );
    await page.close();
  });

  it('replays a session, saves it as a trace, and opens that again', async () => {
    const page = await open('kiln-yard');
    const cdp = await page.createCDPSession();
    await cdp.send('Browser.setDownloadBehavior', { behavior: 'allow', downloadPath: folder });
    await page.select('select[name="console"]', '1');
    await page.select('select[name="standard"]', '1');
    await page.keyboard.press('t', { delay: 60 });
    await waitFor(page, 'fires', 'Turn the page');
    await page.keyboard.press('r', { delay: 60 });
    await waitFor(page, 'mode', 'Yard');
    await page.keyboard.press('Space', { delay: 120 });
    await waitFor(page, 'fires', 'Set down (Left player)');
    const fired = await text(page, 'fires');
    await page.click('[data-do="save"]');
    const saved = await waitForFile('kiln-trace.jsonl');
    const { scheme } = inputOf((SCHEMES['kiln-yard'] as () => string)());
    const traced = traceScheme(scheme, readFileSync(saved, 'utf8'));
    expect(traced.differences).toEqual([]);
    expect(traced.reads).toBeGreaterThan(10);
    await page.click('[data-do="replay"]');
    await waitFor(page, 'session', 'Replaying');
    await waitFor(page, 'session', 'Recording');
    expect(await text(page, 'fires')).toBe(fired);
    await page.select('select[name="console"]', '0');
    const input = await page.$('input[name="trace"]');
    await (input as { uploadFile(path: string): Promise<void> } | null)?.uploadFile(saved);
    await waitFor(page, 'answer', 'the trace and the scheme agree');
    expect(await page.$eval('select[name="console"]', element => (element as HTMLSelectElement).value)).toBe(
      '1',
    );
    await waitFor(page, 'fires', fired);
    expect(await text(page, 'fires')).toBe(fired);
    expect(faults).toEqual([]);
    await page.close();
  });

  it('shows a finding slowly, in the mode and with the switches that it needs, and stops', async () => {
    const page = await open('everything');
    const { findings } = inputOf((SCHEMES['everything'] as () => string)());
    const witnessed = findings.filter(({ witness }) => witness !== undefined);
    expect(witnessed.length).toBeGreaterThan(1);
    expect(await page.$$eval('[data-show]', found => found.length)).toBe(witnessed.length);
    for (const [number, { witness, message }] of witnessed.slice(0, 4).entries()) {
      await page.$eval(`[data-show="${number}"]`, button => (button as HTMLButtonElement).click());
      await waitFor(page, 'message', message);
      await waitFor(page, 'standing', 'The console stands still');
      for (const name of new Set(witness?.steps.flatMap(({ fires }) => fires)))
        expect(await text(page, 'fires')).toContain(name);
      expect(await page.$eval('select[name="speed"]', each => (each as HTMLSelectElement).value)).toBe('0');
    }
    await page.click('[data-do="save"]');
    await waitFor(page, 'answer', 'did not begin at power-on');
    expect(faults).toEqual([]);
    await page.close();
  });

  it('says so where a file is no trace', async () => {
    const page = await open('kiln-yard');
    const path = join(folder, 'shopping.txt');
    writeFileSync(path, 'two eggs\n');
    const input = await page.$('input[name="trace"]');
    await (input as { uploadFile(path: string): Promise<void> } | null)?.uploadFile(path);
    await waitFor(page, 'answer', 'The first line names no register');
    await page.close();
  });

  it('keeps the session where a file is no log, answers at the button, and takes it back when play goes on', async () => {
    const page = await open('kiln-yard');
    await page.keyboard.press('r', { delay: 60 });
    await waitFor(page, 'mode', 'Yard');
    const path = join(folder, 'foreign.json');
    writeFileSync(path, '{"a":1}');
    const input = await page.$('input[name="trace"]');
    await (input as { uploadFile(path: string): Promise<void> } | null)?.uploadFile(path);
    await waitFor(page, 'answer', 'This is no log: nothing in it names a register');
    expect(await text(page, 'mode')).toBe('Yard');
    expect(await page.$eval('[data-part="answer"] [lang="en"]', each => each.textContent)).toMatch(
      /^This is/,
    );
    expect(await page.$eval('[data-part="answer"] :first-child', each => each.textContent)).not.toMatch(
      /no log/,
    );
    expect(await page.$eval('.session [data-part="answer"]', each => each.getAttribute('role'))).toBe(
      'status',
    );
    await page.keyboard.press('w', { delay: 60 });
    await page.waitForFunction(() => document.querySelector('[data-part="answer"]')?.textContent === '');
    await page.close();
  });

  const SPEED = 'select[name="speed"]';
  const chosen = (page: Page) => page.$eval(SPEED, each => (each as HTMLSelectElement).value);
  const away = (page: Page) => page.$$eval('.chip[aria-disabled="true"]', found => found.length);

  it('shows that the controls are off while a replay runs', async () => {
    const page = await open('kiln-yard');
    await page.keyboard.press('r', { delay: 60 });
    await waitFor(page, 'mode', 'Yard');
    expect(await away(page)).toBe(0);
    await page.select(SPEED, '0');
    await page.click('[data-do="replay"]');
    await waitFor(page, 'standing', 'A replay is running');
    const all = await page.$$eval('.chip', found => found.length);
    await vi.waitFor(async () => expect(await away(page)).toBe(all));
    await page.keyboard.press('t', { delay: 60 });
    await page.click('button[data-contact="TV type"]');
    await page.select(SPEED, '1');
    await waitFor(page, 'session', 'Recording');
    await vi.waitFor(async () => expect(await away(page)).toBe(0));
    await page.keyboard.press('w', { delay: 60 });
    expect(await text(page, 'standing')).toBe('');
    expect(await text(page, 'settings')).toContain('colour');
    expect(await text(page, 'fires')).not.toContain('Turn the page');
    await page.close();
  });

  it('gives the keys back after a click, but not to whoever comes with Tab', async () => {
    const page = await open('kiln-yard');
    const focused = () => page.evaluate(() => document.activeElement?.tagName);
    for (const button of ['[data-do="power"]', '[data-do="step"]', 'button[data-contact="TV type"]']) {
      await page.click(button);
      expect(await focused(), button).toBe('BODY');
    }
    await page.focus('[data-do="power"]');
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('BUTTON');
    await page.close();
  });

  it('says that it stands still after a finding is shown, and goes on at the speed from before', async () => {
    const page = await open('everything');
    await page.select(SPEED, '0.25');
    const show = () => page.$eval('[data-show="0"]', button => (button as HTMLButtonElement).click());
    for (const again of ['[data-do="power"]', '[data-do="replay"]']) {
      await show();
      await waitFor(page, 'standing', 'The console stands still');
      expect(await chosen(page)).toBe('0');
      await page.click(again);
      expect(await chosen(page)).toBe('0.25');
    }
    await show();
    await waitFor(page, 'standing', 'The console stands still');
    await page.select('select[name="console"]', '1');
    expect(await chosen(page)).toBe('0.25');
    await page.close();
  });

  it('names each control with its player, and where a switch stands', async () => {
    const page = await open('everything');
    const named = (name: string) => page.$$(`::-p-aria([name="${name}"][role="button"])`);
    expect(await named('Stick up (Left player)')).toHaveLength(1);
    expect(await named('Stick up (Right player)')).toHaveLength(1);
    expect(await named('Left difficulty switch: B')).toHaveLength(1);
    await page.keyboard.press('b');
    await vi.waitFor(async () => expect(await named('Left difficulty switch: A')).toHaveLength(1));
    expect(
      await page.$eval('[data-contact="left button"].chip', each => each.getAttribute('aria-keyshortcuts')),
    ).toBe('Space');
    await page.close();
  });

  it('lets things happen only while their When holds', async () => {
    const page = await open('everything');
    await page.select('select[name="seats"]', '1');
    await page.keyboard.press('s', { delay: 60 });
    await waitFor(page, 'mode', 'Orchard');
    const button = 'button.way';
    const isOff = () => page.$eval(button, each => each.getAttribute('aria-disabled') === 'true');
    await vi.waitFor(async () => expect(await isOff()).toBe(true));
    const { height } = (await (await page.$(button))?.boundingBox()) ?? { height: 0 };
    expect(height).toBeGreaterThanOrEqual(24);
    await page.click(button);
    await page.keyboard.press('s', { delay: 500 });
    await waitFor(page, 'settings', 'full');
    expect(await text(page, 'fires')).not.toContain('Sunset');
    await vi.waitFor(async () => expect(await isOff()).toBe(false));
    await page.click(button);
    await waitFor(page, 'fires', 'Sunset');
    await waitFor(page, 'mode', 'Gate');
    // The mode it leads to is a line of its own and told nowhere else.
    expect((await text(page, 'fires')).split('Gate')).toHaveLength(2);
    await page.close();
  });

  it('tells what a keypad has on each bit, and has no empty frame to scroll', async () => {
    const page = await open('everything');
    const frames = () => page.$$eval('.scrolls', all => all.filter(each => each.checkVisibility()).length);
    expect(await frames()).toBe(1);
    expect(await page.$$eval('.scrolls', all => all.filter(each => !each.ariaLabel).length)).toBe(0);
    await page.select('select[name="seats"]', '2');
    expect(await frames()).toBe(2);
    const cells = await page.$$eval('[data-part="registers"] td', all => all.map(each => each.textContent));
    for (const row of [1, 2, 3, 4]) expect(cells).toContain(`1left: row ${row}, driven`);
    for (const column of [1, 2, 3]) expect(cells.join()).toContain(`left: column ${column}, see below`);
    expect(await page.$eval('.registers .hint', each => each.textContent)).toContain('three corners');
    await page.close();
  });

  it('shows on a small screen captions that can be read, and what fires beside the controls', async () => {
    const page = await open('kiln-yard', each => each.setViewport({ width: 360, height: 700 }));
    const sizes = await page.$$eval(
      '.panel .art:not([hidden]) text[font-weight], .panel .art:not([hidden]) .bold',
      all =>
        all.flatMap(each => {
          const scale = each instanceof SVGGraphicsElement ? (each.getScreenCTM()?.a ?? 0) : 0;
          return each.checkVisibility() ? [Number.parseFloat(getComputedStyle(each).fontSize) * scale] : [];
        }),
    );
    expect(sizes.length).toBeGreaterThanOrEqual(5);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10);
    await page.$eval('.panel', each => each.scrollIntoView());
    await page.keyboard.press('t', { delay: 60 });
    await waitFor(page, 'last', 'Turn the page');
    const { y } = (await (await page.$('[data-part="last"]'))?.boundingBox()) ?? { y: 9999 };
    expect(y).toBeLessThan(700);
    await page.close();
  });

  it('shows in forced colours too what is engaged', async () => {
    const page = await open('kiln-yard');
    const session = await page.createCDPSession();
    await session.send('Emulation.setEmulatedMedia', {
      features: [{ name: 'forced-colors', value: 'active' }],
    });
    const look = () =>
      page.$eval('.chip[data-contact="left button"]', each => {
        const { backgroundColor, textDecorationLine } = getComputedStyle(each);
        return [backgroundColor, textDecorationLine];
      });
    const [before] = await look();
    await page.keyboard.down('Space');
    await waitForBits(page, 'INPT4', '00000000');
    await vi.waitFor(async () => expect((await look())[1]).toBe('underline'));
    expect((await look())[0]).not.toBe(before);
    await page.close();
  });

  it.each(['kiln-yard', 'everything', 'crowded', 'longest, joystick'])(
    'fits a small screen: %s',
    async name => {
      const page = await open(name, each => each.setViewport({ width: 360, height: 700 }));
      const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
      expect(wide).toBeLessThanOrEqual(room ?? 0);
      await page.close();
    },
  );

  // axe-core’s own rules, WCAG 2.2 and best practices, contrast at its enhanced level (7:1).
  it.each(['kiln-yard', 'everything'])('has nothing that axe-core finds: %s', async name => {
    const page = await open(name);
    await page.keyboard.down('w');
    await page.keyboard.down('Space');
    await waitForBits(page, 'SWCHA', '11101111');
    await page.evaluate(axe.source).catch(() => page.addScriptTag({ content: axe.source }));
    const violations = await page.evaluate(async () => {
      const { axe: checker } = window as unknown as {
        axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      const result = await checker.run({ rules: { 'color-contrast-enhanced': { enabled: true } } });
      return result.violations.map(({ id, nodes }) => [
        id,
        ...nodes.slice(0, 3).map(({ html }) => html.slice(0, 200)),
      ]);
    });
    expect(violations).toEqual([]);
    await page.close();
  });
});

async function waitForFile(name: string): Promise<string> {
  await untilThere(() => readdirSync(folder).includes(name));
  return join(folder, name);
}
