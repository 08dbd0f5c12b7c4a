/** The page's own element with `data-part`. Throws a RangeError where the page has none. */
export function partOf(name: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-part="${name}"]`);
  if (found === null) throw new RangeError(`the page has no part ${name}`);
  return found;
}

type Child = Node | string;

/** An element with attributes and children; text never becomes markup. An attribute that is undefined is left out. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly Child[]
): HTMLElement {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes))
    if (value !== undefined) made.setAttribute(key, value);
  made.append(...children);
  return made;
}

/** Changes the text of an element only where it differs, so that readers are told only what is new. */
export function setText(target: Element, text: string): void {
  if (target.textContent !== text) target.textContent = text;
}

/** Every element of the page with a `data-` name, by its value. */
export function elementsBy(root: ParentNode, name: string): ReadonlyMap<string, readonly Element[]> {
  const found = new Map<string, Element[]>();
  for (const each of root.querySelectorAll(`[data-${name}]`)) {
    const value = each.getAttribute(`data-${name}`) ?? '';
    found.set(value, [...(found.get(value) ?? []), each]);
  }
  return found;
}

/** A button that does nothing now; it keeps the focus that it has. */
export function setAway(button: Element, isAway: boolean): void {
  if ((button.getAttribute('aria-disabled') === 'true') === isAway) return;
  if (isAway) button.setAttribute('aria-disabled', 'true');
  else button.removeAttribute('aria-disabled');
}
