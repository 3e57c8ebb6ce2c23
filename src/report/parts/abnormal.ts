import type { Comparison } from '../../checks/compare/comparison.ts';
import { listIn } from '../../checks/exam-index.ts';
import { formOf } from '../../kinds/registries/forms.ts';
import { tell } from '../../kinds/registries/pages.ts';
import type { Key } from '../../model/primitive.ts';
import type { Statement } from '../../model/statement.ts';
import type { AbnormalPart } from '../abnormal.ts';
import { type Content, element, section } from '../html.ts';
import { type Line, linesOf, lineText } from '../lines.ts';
import { type Page, remarks, separated } from '../page.ts';
import { changeFigures } from './change.ts';

/** What is abnormal, part by part, each with its size and its change, and a number on the drawing. */
export function abnormalPart(page: Page, parts: readonly AbnormalPart[]): Content {
  const { labels, teller } = page;
  if (parts.length === 0) {
    return section('abnormal', labels.abnormal, element('p', {}, labels.noAbnormal));
  }
  const sizes = sizesOf(page);
  return section(
    'abnormal',
    labels.abnormal,
    element(
      'div',
      { class: 'parts' },
      parts.map(({ section: code, signs, states }) =>
        element(
          'div',
          { class: 'part' },
          element('h3', {}, teller.display('sections', code)),
          element(
            'ul',
            { class: 'signs' },
            signs.map((sign) => signLine(page, sign, sizes.get(sign.key) ?? [])),
            linesOf(states, page).map(({ of, content }) =>
              element('li', { class: 'state', 'data-of': of.join(' ') }, content),
            ),
          ),
        ),
      ),
    ),
  );
}

/** A sign that stands in a table is told here too, in short; the table has its note. */
function signLine(page: Page, sign: Statement, sizes: readonly Content[]): Content {
  const told = tell(sign, page);
  const number = String(page.numbers.get(sign.key));
  const here = !('table' in told);
  const basis = page.exam.conclusion?.basedOn?.includes(sign.key) === true;
  return element(
    'li',
    {
      id: `sign-${number}`,
      class: basis ? 'basis' : undefined,
      'data-of': here ? sign.key : undefined,
    },
    element('a', { class: 'number', href: `#mark-${number}` }, number),
    ' ',
    element('span', { class: 'sign' }, lineText(told, page)),
    sizes.length > 0 && element('div', { class: 'size' }, separated(sizes)),
    here && remarks(page, sign),
  );
}

/** Each sign as one line, with what was measured of it and its note. */
export function signLines(page: Page, signs: readonly Statement[]): readonly Line[] {
  const sizes = sizesOf(page);
  return signs.map((sign) => {
    const size = sizes.get(sign.key) ?? [];
    return {
      of: [sign.key],
      content: [
        lineText(tell(sign, page), page),
        size.length > 0 && ['. ', separated(size)],
        remarks(page, sign),
      ],
    };
  });
}

/** What was measured or pictured of a sign, with its change: by the key of the sign. */
function sizesOf(page: Page): ReadonlyMap<Key, Content[]> {
  const changes = new Map<Key | undefined, Comparison>(
    page.checks.comparisons.map((one) => [one.now, one]),
  );
  const sizes = new Map<Key, Content[]>();
  for (const statement of page.exam.statements) {
    const about = formOf(statement).about?.(statement) ?? [];
    const told = about.length === 0 ? undefined : tell(statement, page);
    if (told === undefined || ('section' in told && told.section !== 'pictures')) continue;
    const change = changes.get(statement.key);
    const size: Content = [
      ('table' in told && told.brief) || lineText(told, page),
      change?.figures && [' (', changeFigures(page, change), ')'],
    ];
    for (const { key } of about) listIn(sizes, key).push(size);
  }
  return sizes;
}
