import { listIn } from '../checks/exam-index.ts';
import { isUnconfirmed } from '../kinds/facets/base.ts';
import { formOf } from '../kinds/registries/forms.ts';
import { sectionOf } from '../kinds/registries/meanings.ts';
import { tell } from '../kinds/registries/pages.ts';
import type { Statement } from '../model/statement.ts';
import { plainText } from '../report/html.ts';
import { linesOf } from '../report/lines.ts';
import { remarks } from '../report/page.ts';
import type { Writing } from './clinical.ts';
import type { LetterSentence } from './letter.ts';

/**
 * What was measured, tested and scored in the parts of the body in which something is abnormal: right
 * and left of one thing in one sentence. What belongs to a sign, or is one, is told with the signs.
 */
export function figureSentences({ page, parts }: Writing): LetterSentence[] {
  const near = new Set(parts.map(({ section }) => section));
  const told = page.exam.statements.filter(
    (one) =>
      !isUnconfirmed(one) && !page.numbers.has(one.key) && near.has(sectionOf(one, page.catalogue)),
  );
  const rows = new Map<string, { readonly keys: string[]; readonly texts: string[] }>();
  const scores: Statement[] = [];
  for (const statement of told) {
    const one = tell(statement, page);
    if ('table' in one) {
      // What was measured of a sign stands behind it.
      if ((formOf(statement).about?.(statement) ?? []).length > 0) continue;
      const row = rows.get(one.name) ?? { keys: [], texts: [] };
      rows.set(one.name, row);
      const side = one.side === undefined ? '' : `${page.teller.side(one.side)}: `;
      row.keys.push(statement.key);
      row.texts.push(`${side}${plainText([one.answer, remarks(page, statement)])}`);
    } else if (one.section === 'scores') scores.push(statement);
  }
  return [
    ...[...alike(rows)].map(({ names, keys, texts }) => ({
      text: `${names.join('; ')}: ${texts.join(', ')}`,
      of: keys.map((statement) => ({ statement })),
    })),
    ...linesOf(scores, page).map(({ of, content }) => ({
      text: plainText(content),
      of: of.map((statement) => ({ statement })),
    })),
  ];
}

interface Told {
  readonly names: string[];
  readonly keys: string[];
  readonly texts: readonly string[];
}

/** Things of which the same was found share a sentence. */
function alike(
  rows: ReadonlyMap<
    string,
    { readonly keys: readonly string[]; readonly texts: readonly string[] }
  >,
): readonly Told[] {
  const groups = new Map<string, Told[]>();
  for (const [name, { keys, texts }] of rows) {
    const group = listIn(groups, texts.join('\n'));
    const [first] = group;
    if (first === undefined) group.push({ names: [name], keys: [...keys], texts });
    else {
      first.names.push(name);
      for (const key of keys) first.keys.push(key);
    }
  }
  return [...groups.values()].flat();
}
