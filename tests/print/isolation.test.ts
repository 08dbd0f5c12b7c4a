import { createServer, type Server } from 'node:http';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { printDocuments } from '../../src/print/print.js';
import { readPdfPages } from '../support/pdf.js';
import { browserTool } from '../support/tools.js';

const hits: string[] = [];
let server: Server;
let origin = '';

beforeAll(async () => {
  server = createServer((request, response) => {
    hits.push(`${request.method} ${request.url}`);
    response.end('got it');
  });
  await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  origin = typeof address === 'object' && address ? `http://127.0.0.1:${address.port}` : '';
});

afterAll(() => {
  server.close();
});

/** All the ways out we know of, each with an address of its own. */
const attacks: Readonly<Record<string, (url: string) => string>> = {
  image: url => `<img src="${url}" srcset="${url}2 2x">`,
  picture: url => `<picture><source srcset="${url}"><img src="${url}"></picture>`,
  script: url => `<script src="${url}"></script><script>fetch('${url}');location='${url}'</script>`,
  'event handler': url => `<img src="x:" onerror="new Image().src='${url}'">`,
  iframe: url => `<iframe src="${url}"></iframe><iframe srcdoc="<img src='${url}'>"></iframe>`,
  'iframe with data': url => `<iframe src="data:text/html,<img src='${url}'>"></iframe>`,
  'object and embed': url => `<object data="${url}"></object><embed src="${url}">`,
  'style import': url => `<style>@import url("${url}");</style>`,
  'style sheet': url => `<link rel="stylesheet" href="${url}">`,
  'style images': url =>
    `<p style="background:url('${url}');list-style:url('${url}');content:url('${url}')">x</p>`,
  font: url => `<style>@font-face{font-family:F;src:url('${url}')}em{font-family:F}</style><em>x</em>`,
  'meta refresh': url => `<meta http-equiv="refresh" content="0;url=${url}">`,
  'another policy': url =>
    `<meta http-equiv="Content-Security-Policy" content="default-src *"><img src="${url}">`,
  hints: url =>
    ['prefetch', 'preload', 'preconnect', 'dns-prefetch', 'modulepreload', 'prerender', 'icon', 'manifest']
      .map(rel => `<link rel="${rel}" href="${url}" as="image">`)
      .join(''),
  'speculation rules': url =>
    `<script type="speculationrules">{"prefetch":[{"source":"list","urls":["${url}"]}]}</script>`,
  base: url => `<base href="${url}/"><img src="relative.png">`,
  media: url =>
    `<video src="${url}" poster="${url}" autoplay></video><audio src="${url}" autoplay></audio><track src="${url}">`,
  svg: url =>
    `<svg><image href="${url}"/><use href="${url}#a"/><script href="${url}"/><style>@import '${url}'</style></svg>`,
  form: url => `<form action="${url}"><button autofocus>x</button></form>`,
};

test('a hostile page reaches nothing and keeps its words', async () => {
  const browser = await browserTool();
  const jobs = Object.entries(attacks).map(([name, attack], index) => ({
    name,
    title: name,
    html: `<!doctype html><html><head><title>t</title></head><body><p>before ${index}</p>${attack(`${origin}/${index}`)}<p>after ${index}</p></body></html>`,
  }));
  const printed = await printDocuments(jobs, { browser });
  await new Promise(resolve => setTimeout(resolve, 300)); // a late hit would come now
  expect(hits).toEqual([]);
  for (const [index, { name, pdf }] of printed.entries()) {
    const text = (await readPdfPages(pdf)).flatMap(page => page.texts.map(item => item.text)).join(' ');
    expect(text, name).toContain(`before ${index}`);
    expect(text, name).toContain(`after ${index}`);
  }
});

test('the server of this test does notice a request', async () => {
  await fetch(`${origin}/self`);
  expect(hits).toContain('GET /self');
});

test('data: pictures are let through', async () => {
  const svg =
    "<svg xmlns='http://www.w3.org/2000/svg' width='40' height='40'><text y='20'>inside</text></svg>";
  const html = `<img alt="" src="data:image/svg+xml,${encodeURIComponent(svg)}">`;
  const [printed] = await printDocuments([{ name: 'picture', title: 'p', html }], {
    browser: await browserTool(),
  });
  const [page] = await readPdfPages(printed?.pdf ?? new Uint8Array());
  expect(page?.texts.map(({ text }) => text)).toEqual(['inside']);
});
