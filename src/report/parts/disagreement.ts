import { issueMessage } from '../../issues/issue.ts';
import { tell } from '../../kinds/registries/pages.ts';
import { type Content, list, section } from '../html.ts';
import { lineText } from '../lines.ts';
import { inEnglish, type Page } from '../page.ts';

/** What the checks found not to agree: statements with one another, figures, sides and the conclusion's words. */
export function disagreementPart(page: Page): Content {
  const { checks, exam, labels, issueLanguage } = page;
  const statements = new Map(exam.statements.map((one) => [one.key, one]));
  const lines = checks.issues
    .filter(({ rule, severity }) => rule !== undefined && severity !== 'information')
    .map((found): Content => {
      const { statement } = found;
      const about = statement === undefined ? undefined : statements.get(statement);
      const said =
        issueLanguage === undefined
          ? inEnglish(found.message)
          : issueMessage(found, issueLanguage).message;
      return [said, about && [': ', lineText(tell(about, page), page)]];
    });
  return section('disagree', labels.disagree, list(lines));
}
