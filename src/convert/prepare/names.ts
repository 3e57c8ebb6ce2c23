import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { patternSteps } from '../cells/pick.ts';
import { issue } from '../issue.ts';
import type { CellOperation } from '../mapping/cells.ts';
import type { ExamFields, IdentifierField } from '../mapping/exam-fields.ts';
import type { DateField, ItemRecords, Mapping, SourceField, Where } from '../mapping/mapping.ts';
import type { Target } from '../mapping/target.ts';
import { namesOfText, sourceNames } from '../record/context.ts';

/** Names that the exam head takes. */
export function headNames(exam: ExamFields): string[] {
  const { subject, performed, recorded, examiner, conclusion } = exam;
  return [
    ...[...exam.id.from, ...(exam.id.also ?? [])].flatMap(namesOfText),
    ...namesOfText(exam.status.from),
    ...(subject.identifiers ?? []).flatMap(identifierNames),
    subject.reference?.from,
    subject.family,
    ...namesOfText(subject.given),
    ...namesOfText(subject.name),
    ...dateNames(subject.birthDate),
    ...namesOfText(subject.gender?.from),
    ...dateNames(performed.start),
    ...dateNames(performed.end),
    ...dateNames(recorded.from),
    ...(examiner.identifier === undefined ? [] : identifierNames(examiner.identifier)),
    ...namesOfText(examiner.name),
    ...namesOfText(exam.indication),
    ...namesOfText(conclusion?.text),
    conclusion?.concern.from,
  ].filter((name) => name !== undefined);
}

/** Names that a target takes beside its value. */
export function companionNames(target: Target): string[] {
  return [
    target.noteFrom,
    'sideFrom' in target ? target.sideFrom : undefined,
    'methodFrom' in target ? target.methodFrom : undefined,
    'unitFrom' in target ? target.unitFrom : undefined,
  ].flatMap(sourceNames);
}

/** Names that items take, those of their targets among them. */
export function itemNames(items: ItemRecords): string[] {
  const { code, value, side, region, method, conditions, modality, unit, note, group } = items;
  const { at, status } = items;
  const own = [value, side, region, method, conditions, modality, unit, note, group, status?.from];
  return [
    ...code,
    ...own.flatMap(sourceNames),
    ...dateNames(at),
    ...wheresOf(items).map(({ field }) => field),
    ...targetsOf(items).flatMap(companionNames),
  ];
}

function wheresOf({ where, codeWhere, valueWhere }: ItemRecords): Where[] {
  return [where, codeWhere, valueWhere].filter((one) => one !== undefined);
}

function targetsOf({ map, otherwise }: ItemRecords): Target[] {
  return [...Object.values(map), ...(otherwise === undefined ? [] : [otherwise])];
}

function identifierNames({ from, where, oidFrom }: IdentifierField): string[] {
  const beside = [where?.field, oidFrom].filter((name) => name !== undefined);
  return [from, ...beside];
}

/** Names of the fields that an operation makes. */
export function madeNames(operation: CellOperation): string[] {
  switch (operation.do) {
    case 'split-sides': {
      const { right, left, both } = operation.into;
      return [right, left, ...(both === undefined ? [] : [both])];
    }
    case 'pick':
      return operation.patterns.flatMap((pattern) =>
        (patternSteps(pattern) ?? []).flatMap((step) => ('name' in step ? [step.name] : [])),
      );
    default:
      return [operation.into];
  }
}

/** Names of the fields that a date is taken from. */
export function dateNames(field: DateField | undefined): string[] {
  if (field === undefined) return [];
  if (typeof field === 'string') return [field];
  const from = typeof field.from === 'string' ? [field.from] : field.from;
  return field.time === undefined ? [...from] : [...from, field.time];
}

/** Every field has one use: a name that two parts of the mapping claim is an issue. */
export function nameIssues(mapping: Mapping): Issue[] {
  const uses: [name: string, part: string, path: Path][] = [
    ...[...new Set(headNames(mapping.exam))].map((name): [string, string, Path] => [
      name,
      'exam',
      ['exam'],
    ]),
    ...Object.keys(mapping.fields ?? {}).map((name): [string, string, Path] => [
      name,
      'fields',
      ['fields', name],
    ]),
    ...(mapping.layout ?? []).map((name, at): [string, string, Path] => [
      name,
      'layout',
      ['layout', at],
    ]),
    ...(mapping.text ?? []).map((name, at): [string, string, Path] => [name, 'text', ['text', at]]),
    ...(mapping.items ?? []).flatMap((items, at) =>
      [...new Set(itemNames(items))].map((name): [string, string, Path] => [
        name,
        'items',
        ['items', at],
      ]),
    ),
  ];
  const seen = new Map<string, string>();
  const conditions = new Set(whereNames(mapping));
  const issues: Issue[] = [];
  for (const [name, part, path] of uses) {
    // What a field is only told apart by may be layout as well.
    if (part === 'layout' && conditions.has(name)) continue;
    const other = seen.get(name);
    if (other !== undefined && other !== part) {
      issues.push(
        issue('ambiguous-mapping', path, { reason: 'field-use', property: other, code: part }),
      );
    }
    seen.set(name, part);
  }
  return issues;
}

/** Names that only say which of several fields is meant. */
function whereNames({ exam, items, fields }: Mapping): string[] {
  const identifiers = [
    ...(exam.subject.identifiers ?? []),
    ...(exam.examiner.identifier === undefined ? [] : [exam.examiner.identifier]),
  ];
  const targets = [...Object.values(fields ?? {}), ...(items ?? []).flatMap(targetsOf)];
  const sources: (SourceField | undefined)[] = [
    ...(items ?? []).flatMap(
      ({ side, region, method, conditions, modality, unit, note, group }) => [
        side,
        region,
        method,
        conditions,
        modality,
        unit,
        note,
        group,
      ],
    ),
    ...targets.flatMap((target) => [
      target.noteFrom,
      'sideFrom' in target ? target.sideFrom : undefined,
      'methodFrom' in target ? target.methodFrom : undefined,
      'unitFrom' in target ? target.unitFrom : undefined,
    ]),
  ];
  const beside = [...identifiers, ...sources].flatMap((source) =>
    typeof source === 'object' && source.where !== undefined ? [source.where.field] : [],
  );
  return [...beside, ...(items ?? []).flatMap((one) => wheresOf(one).map(({ field }) => field))];
}
