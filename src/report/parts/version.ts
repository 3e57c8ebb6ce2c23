import { tell } from '../../kinds/registries/pages.ts';
import type { Statement } from '../../model/statement.ts';
import { type Content, element, section, table, words } from '../html.ts';
import { lineText } from '../lines.ts';
import { type Page, remarks } from '../page.ts';

/**
 * What the last step of the record changed or took out, with what stood there before where that
 * version is given: without it there is no such column, since an empty one would read as nothing. A page that shows only the new value hides it from those who acted on the old one.
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
    subject(now.get(key) ?? before.get(key), page) ?? words(key),
    ...(earlier === undefined ? [] : [told(before.get(key), earlier, labels.notBefore)]),
    told(now.get(key), page, labels.withdrawn),
  ]);
  const { what, before: was, now: is } = labels.columns;
  const head = earlier === undefined ? [what, is] : [what, was, is];
  return section(
    'corrected',
    labels.corrected,
    last.reason && element('p', {}, words(last.reason)),
    table({ caption: labels.corrected, head, rows }),
  );
}

/** What a row is about; a key alone where neither version tells. */
function subject(statement: Statement | undefined, page: Page): string | undefined {
  return statement && page.teller.subject(statement);
}

function told(statement: Statement | undefined, page: Page, otherwise: string): Content {
  if (statement === undefined) return otherwise;
  return [lineText(tell(statement, page), page), remarks(page, statement)];
}
