import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';

/** The floor that reading and checking is held against: the bare Markdown parse of the same text. */
export function parseMarkdown(text: string): void {
  unified().use(remarkParse).use(remarkGfm).parse(text);
}
