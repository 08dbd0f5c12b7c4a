import type { Element, ElementContent } from 'hast';
import type { DocumentInput, PrintableDocument } from '../document.js';
import { h, SCROLLS } from '../page/elements.js';
import { readFurniture, sheetPageRules } from '../page/furniture.js';
import { writePage } from '../page/shell.js';
import { readStyles, readTemplate } from '../page/templates.js';
import type { RecipeView, RecipeWay } from './recipe-view.js';
import { severityShape, verdictShape } from './shapes.js';
import { turnedPage } from './turned-page.js';
import { type FindingGroup, type ReportView, viewReport } from './view.js';
import { findingCard } from './write-finding.js';
import { matrixSection } from './write-matrix.js';

const TITLE = 'Check report';

/** The designer's report: findings, coverage matrix, recipes, what was accepted and why. */
export function createReportDocument(input: DocumentInput): PrintableDocument {
  const { scheme, templates } = input;
  const view = viewReport(input);
  const title = view.title === '' ? TITLE : `${view.title}: ${TITLE}`;
  const paper = scheme.game.sheetPaper;
  const furniture = readFurniture(templates);
  const facts = { title: view.title, version: view.version, document: TITLE };
  const html = writePage({
    title,
    language: 'en',
    kind: 'report',
    styles: [
      readStyles(templates, ['base', 'sheets']),
      readTemplate(templates, ['styles', 'report.css']),
      sheetPageRules(paper, furniture, facts),
      turnedPage(paper),
    ],
    body: [h('main', [...writeBody(view)])],
    extraText: view.version,
  });
  return {
    name: 'report',
    html,
    title,
    subject: 'Findings, coverage and recipes of an input scheme',
    language: 'en',
  };
}

/** The report as HTML. */
export function writeReport(input: DocumentInput): string {
  return createReportDocument(input).html;
}

function writeBody(view: ReportView): readonly Element[] {
  return [
    h('header', { class: 'sheet-title' }, [
      h('p', { class: 'kicker' }, TITLE),
      h('h1', view.title === '' ? 'A scheme without a title' : view.title),
      ...(view.version === '' ? [] : [h('p', { class: 'version' }, `Version ${view.version}`)]),
    ]),
    verdictBox(view),
    h(
      'dl',
      { class: 'facts' },
      view.facts.map(([name, value]) => h('div', [h('dt', name), h('dd', value === '' ? '—' : value)])),
    ),
    ...view.groups.map(findingSection),
    coverageSection(view),
    ...recipeSection(view),
    ...acceptedSection(view),
    h(
      'p',
      { class: 'caution' },
      'Try a scheme on the machine before it goes to players. Long holds and quick repeats tire hands; flashing pictures can make some people unwell.',
    ),
  ];
}

function verdictBox({ verdict, summary }: ReportView): Element {
  const counts = [
    ['error', summary.errors],
    ['warning', summary.warnings],
    ['note', summary.notes],
    ['accepted', summary.accepted],
  ] as const;
  return h('section', { class: `verdict ${verdict.mark}` }, [
    h('div', { class: 'verdict-mark' }, [verdictShape(verdict.mark)]),
    h('div', [h('p', { class: 'headline' }, verdict.headline), h('p', verdict.sentence)]),
    h(
      'ul',
      { class: 'counts' },
      counts.map(([severity, count]) =>
        h('li', { class: count === 0 ? 'none' : '' }, [
          severityShape(severity),
          h('b', String(count)),
          ` ${countWord(severity, count)}`,
        ]),
      ),
    ),
  ]);
}

const countWord = (severity: string, count: number): string =>
  severity === 'accepted' || count === 1 ? severity : `${severity}s`;

function findingSection({ title, findings, severity }: FindingGroup): Element {
  return h('section', { class: `findings of-${severity}` }, [h('h2', title), ...findings.map(findingCard)]);
}

function coverageSection({ matrix }: ReportView): Element {
  const content: readonly ElementContent[] =
    matrix === null
      ? [
          h(
            'p',
            'Coverage was not explored: the scheme has faults that leave it unclear where the game can go. Mend the errors above first.',
          ),
        ]
      : matrixSection(matrix);
  return h('section', { class: matrix === null ? 'coverage' : 'coverage wall', ...SCROLLS }, [
    h('h2', 'Where the game plays'),
    ...content,
  ]);
}

function recipeSection({ modeRecipes, variationRecipes }: ReportView): readonly Element[] {
  if (modeRecipes.length === 0) return [];
  return [
    h('section', { class: 'recipes' }, [
      h('h2', 'How to get there'),
      h('p', 'A shortest way from power-on to each mode and variation. A switch that is moved is a step.'),
      h('h3', 'Modes'),
      recipeTable('Mode', modeRecipes),
      ...(variationRecipes.length === 0
        ? []
        : [h('h3', 'Variations'), recipeTable('Variation', variationRecipes)]),
    ]),
  ];
}

function recipeTable(name: string, recipes: readonly RecipeView[]): Element {
  return h('table', { class: 'recipe-table' }, [
    h('caption', { class: 'read-only' }, `${name}s and how to reach them`),
    h(
      'thead',
      h(
        'tr',
        [name, 'Where', 'Steps'].map(text => h('th', { scope: 'col' }, text)),
      ),
    ),
    ...recipes.map(({ target, ways }) =>
      h(
        'tbody',
        ways.map((way, index) =>
          h('tr', [
            ...(index === 0 ? [h('th', { scope: 'rowgroup', rowSpan: ways.length }, target)] : []),
            h('td', way.where),
            h('td', wayContent(way)),
          ]),
        ),
      ),
    ),
  ]);
}

function wayContent({ steps }: RecipeWay): Element {
  if (steps === null) return h('p', { class: 'no-way' }, [verdictShape('broken'), ' no way from power-on']);
  if (steps.length === 0) return h('p', 'there at power-on');
  return h(
    'ol',
    steps.map(step => h('li', step)),
  );
}

function acceptedSection({ accepted }: ReportView): readonly Element[] {
  if (accepted.length === 0) return [];
  return [
    h('section', { class: 'findings of-accepted' }, [
      h('h2', 'Accepted'),
      h('p', 'Looked at and kept, each with its reason.'),
      ...accepted.map(findingCard),
    ]),
  ];
}
