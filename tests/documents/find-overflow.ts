import type { Page } from 'puppeteer-core';

/**
 * Looks at a page as it is laid out for print: texts that leave the box they stand in, that leave their drawing,
 * or that lie on each other. One line for each fault; empty where all is well.
 *
 * @param widthMm of the text area, so that lines break as on paper
 */
export async function findOverflow(page: Page, widthMm: number): Promise<readonly string[]> {
  await page.emulateMediaType('print');
  await page.setViewport({ width: Math.round((widthMm * 96) / 25.4), height: 1000 });
  return page.evaluate(lookForFaults);
}

/** Runs in the browser: nothing from outside it is there. */
function lookForFaults(): readonly string[] {
  interface Box {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  }
  const faults: string[] = [];
  const lines: (Box & { readonly text: string })[] = [];
  const slack = 1.5;

  /** The drawing, or else the nearest element that is no part of a line. */
  function boxOf(element: Element): Element {
    const drawing = element.closest('svg');
    if (drawing !== null) return drawing;
    let box = element;
    while (getComputedStyle(box).display.startsWith('inline') && box.parentElement !== null)
      box = box.parentElement;
    return box;
  }

  /** Where the letters are within a line box: of Noto Sans, its ascent of 1.07 em ends 0.3 em above the letters. */
  function inkOf({ left, right, top, bottom }: Box, turned: boolean): Box {
    const [above, below] = [0.22, 0.06];
    if (turned) {
      const thick = right - left;
      return {
        left: left + thick * below,
        right: right - thick * above,
        top: top + 0.5,
        bottom: bottom - 0.5,
      };
    }
    const thick = bottom - top;
    return { left: left + 0.5, right: right - 0.5, top: top + thick * above, bottom: bottom - thick * below };
  }

  function isOut(line: Box, box: Box, isDrawn: boolean): boolean {
    if (line.left < box.left - slack || line.right > box.right + slack) return true;
    return isDrawn && (line.top < box.top - slack || line.bottom > box.bottom + slack);
  }

  function look(parent: Element, node: Node, text: string): void {
    const drawn = parent instanceof SVGGraphicsElement;
    const range = document.createRange();
    range.selectNodeContents(node);
    const turned = drawn && Math.abs(parent.getScreenCTM()?.b ?? 0) > 0.01;
    const box = boxOf(parent);
    for (const rect of drawn ? [parent.getBoundingClientRect()] : range.getClientRects()) {
      if (rect.width < 0.5) continue;
      const ink = inkOf(rect, turned);
      if (isOut(ink, box.getBoundingClientRect(), drawn))
        faults.push(`“${text.slice(0, 40)}” leaves its ${box.localName}`);
      lines.push({ ...ink, text });
    }
  }

  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const parent = node.parentElement;
    const text = (node.textContent ?? '').trim();
    if (parent !== null && text !== '' && parent.closest('.read-only') === null) look(parent, node, text);
  }
  lines.sort((a, b) => a.top - b.top);
  lines.forEach((line, index) => {
    for (const other of lines.slice(index + 1)) {
      if (other.top >= line.bottom) break;
      if (other.left < line.right && other.right > line.left)
        faults.push(`“${line.text.slice(0, 40)}” and “${other.text.slice(0, 40)}” lie on each other`);
    }
  });
  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth > clientWidth + 1) faults.push(`the page is ${scrollWidth} px wide`);
  return faults;
}
