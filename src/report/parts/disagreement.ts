import { tell } from '../../kinds/registries/pages.ts';
import { type Content, list, section } from '../html.ts';
import { lineText } from '../lines.ts';
import { inEnglish, type Page } from '../page.ts';

/** What the checks found not to agree: statements with one another, figures, sides and the conclusion's words. */
export function disagreementPart(page: Page): Content {
  const { checks, exam, labels } = page;
  const statements = new Map(exam.statements.map((one) => [one.key, one]));
  const lines = checks.issues
    .filter(({ rule, severity }) => rule !== undefined && severity !== 'information')
    .map(({ message, statement }): Content => {
      const about = statement === undefined ? undefined : statements.get(statement);
      return [inEnglish(message), about && [': ', lineText(tell(about, page), page)]];
    });
  return section('disagree', labels.disagree, list(lines));
}
