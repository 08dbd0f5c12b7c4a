/** What a PDF says of itself. */
export interface DocumentInfo {
  readonly title: string;
  readonly author?: string;
  readonly subject?: string;
  /** BCP 47 tag; `en` if left out. */
  readonly language?: string;
}

const creator = 'Leverleaf';
const producer = 'Skia/PDF';

/**
 * The information dictionary (ISO 32000-1, 14.3.3). Dates are left out: the standard lets them, and the same
 * scheme must give the same bytes on any day.
 */
export function writeInfo(info: DocumentInfo): string {
  const entries: readonly (readonly [string, string | undefined])[] = [
    ['Title', info.title],
    ['Author', info.author],
    ['Subject', info.subject],
    ['Creator', creator],
    ['Producer', producer],
  ];
  const written = entries.flatMap(([key, value]) => (value ? [`/${key} ${writeTextString(value)}`] : []));
  return `<<${written.join('\n')}>>`;
}

/** The same as XMP (ISO 16684-1), which newer readers and archives prefer. */
export function writeXmp(info: DocumentInfo): string {
  const language = (value: string) =>
    `<rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(value)}</rdf:li></rdf:Alt>`;
  const properties = [
    '<dc:format>application/pdf</dc:format>',
    `<dc:title>${language(info.title)}</dc:title>`,
    info.author && `<dc:creator><rdf:Seq><rdf:li>${escapeXml(info.author)}</rdf:li></rdf:Seq></dc:creator>`,
    info.subject && `<dc:description>${language(info.subject)}</dc:description>`,
    `<dc:language><rdf:Bag><rdf:li>${escapeXml(info.language ?? 'en')}</rdf:li></rdf:Bag></dc:language>`,
    `<xmp:CreatorTool>${creator}</xmp:CreatorTool>`,
    `<pdf:Producer>${producer}</pdf:Producer>`,
  ];
  return [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"',
    ' xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">',
    ...properties.filter(Boolean),
    '</rdf:Description></rdf:RDF></x:xmpmeta>',
    '<?xpacket end="r"?>',
  ].join('\n');
}

/** A text string (ISO 32000-1, 7.9.2.2) as UTF-16BE in hexadecimal: no character of it can end the string. */
export function writeTextString(text: string): string {
  const units = Array.from({ length: text.length }, (_, index) =>
    text.charCodeAt(index).toString(16).padStart(4, '0'),
  );
  return `<feff${units.join('')}>`;
}

function escapeXml(text: string): string {
  const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 (2.2) has no place for them, escaped or not.
      .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '\uFFFD')
      .replace(/[&<>"]/g, character => escapes[character] ?? character)
  );
}
