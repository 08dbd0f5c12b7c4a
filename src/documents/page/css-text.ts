/** A scheme's text as a CSS string: no character of it can end the string, the rule or the style element. */
export function cssString(text: string): string {
  const escaped = text.replace(
    /[^\p{L}\p{N} .,:;!?()·–—’“”'/+-]/gu,
    character => `\\${(character.codePointAt(0) ?? 0xfffd).toString(16)} `,
  );
  return `"${escaped}"`;
}

/** A style sheet that can't end its `style` element early. */
export function styleText(css: string): string {
  return css.replace(/<(?=[/!])/g, '\\3c ');
}
