import { listIn } from '../../checks/exam-index.ts';
import { isUnconfirmed } from '../../kinds/facets/base.ts';
import { sectionOf } from '../../kinds/registries/meanings.ts';
import { inPageOrder, tell } from '../../kinds/registries/pages.ts';
import type { Statement } from '../../model/statement.ts';
import { orderOf } from '../abnormal.ts';
import { type Content, element, section } from '../html.ts';
import { type Line, lineList, linesOf, lineText } from '../lines.ts';
import { type Page, remarks } from '../page.ts';
import {
  headingOf,
  type ListSection,
  sectionId,
  sideTables,
  signSections,
  wordSections,
} from '../sections.ts';
import { sideTablePart } from './side-table.ts';

export interface StatementParts {
  /** What was not examined or only in part, what was left open, and what was taken over. */
  readonly notExamined: readonly Content[];
  /** Signs that are not abnormal, and regions found normal. */
  readonly signs: readonly Content[];
  readonly tables: readonly Content[];
  /** Scores, complaints, notes and pictures. */
  readonly words: readonly Content[];
}

/**
 * The sections in which statements are told, but for what is abnormal. Each statement is told once,
 * with its note below it; a section without statements is left out.
 */
export function statementParts(page: Page): StatementParts {
  const { catalogue, labels, exam } = page;
  const inSections = new Map<string, Statement[]>();
  const takenOver: Statement[] = [];
  const order = (statement: Statement): number =>
    orderOf(sectionOf(statement, catalogue), catalogue);
  const ordered = [...inPageOrder(exam.statements)].sort((a, b) => order(a) - order(b));
  for (const statement of ordered) {
    if (isUnconfirmed(statement)) {
      takenOver.push(statement);
      continue;
    }
    const told = tell(statement, page);
    listIn(inSections, 'table' in told ? told.table : told.section).push(statement);
  }
  const lists = (sections: readonly ListSection[]): Content[] =>
    sections.map((id) =>
      section(
        sectionId(id),
        headingOf(id, labels),
        lineList(linesOf(inSections.get(id) ?? [], page)),
      ),
    );
  const left = lineList(linesOf(inSections.get('notExamined') ?? [], page));
  return {
    notExamined: [
      section('not-examined', labels.notExamined, left ?? element('p', {}, labels.allExamined)),
      lists(['undecided']),
      takenOverPart(page, takenOver),
    ],
    signs: lists(signSections),
    tables: sideTables.map((id) => sideTablePart(id, inSections.get(id) ?? [], page)),
    words: lists(wordSections),
  };
}

/** Apart from what is known today: a line says when it was seen and what was said then. */
function takenOverPart(page: Page, statements: readonly Statement[]): Content {
  const { labels } = page;
  return section(
    'taken-over',
    labels.takenOver,
    statements.length > 0 && element('p', {}, labels.takenOverNote),
    lineList(takenOverLines(statements, page)),
  );
}

/** What was taken over and not looked at again, each with when it was seen. */
export function takenOverLines(statements: readonly Statement[], page: Page): readonly Line[] {
  return statements.map((statement) => ({
    of: [statement.key],
    content: [
      `${page.labels.asSeenThen}: `,
      lineText(tell(statement, page), page),
      remarks(page, statement),
    ],
  }));
}
