import { tell } from '../../kinds/registries/pages.ts';
import type { Statement } from '../../model/statement.ts';
import { type Content, element, section, table, words } from '../html.ts';
import { lineText } from '../lines.ts';
import { type Page, remarks } from '../page.ts';

/**
 * What the last step of the record changed or took out, with what stood there before where that
 * version is given. A page that shows only the new value hides it from those who acted on the old one.
 */
export function versionPart(page: Page): Content {
  const { exam, labels, versionBefore } = page;
  const last = exam.history?.at(-1);
  const touched = [...(last?.changed ?? []), ...(last?.withdrawn ?? [])];
  if (last === undefined || touched.length === 0) return undefined;
  const now = new Map(exam.statements.map((one) => [one.key, one]));
  const before = new Map(versionBefore?.statements.map((one) => [one.key, one]));
  const earlier = versionBefore && { ...page, exam: versionBefore };
  const rows = touched.map((key): Content[] => [
    words(key),
    earlier && told(before.get(key), earlier, labels.notBefore),
    told(now.get(key), page, labels.withdrawn),
  ]);
  const { what, before: was, now: is } = labels.columns;
  return section(
    'corrected',
    labels.corrected,
    last.reason && element('p', {}, words(last.reason)),
    table({ caption: labels.corrected, head: [what, was, is], rows }),
  );
}

function told(statement: Statement | undefined, page: Page, otherwise: string): Content {
  if (statement === undefined) return otherwise;
  return [lineText(tell(statement, page), page), remarks(page, statement)];
}
