import { append } from '../../data/append.ts';
import { type BudgetOption, within } from '../../issues/budget.ts';
import { failure, hasErrors, type Issue, type Outcome, success } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import type { Path } from '../../issues/path.ts';
import type { Supplied } from '../../kinds/facets/conversion.ts';
import { builtInCatalogue, type Catalogue } from '../../terminology/catalogue.ts';
import { patternSteps } from '../cells/pick.ts';
import { issue } from '../issue.ts';
import { completeMapping, syntaxIssues } from '../mapping/complete.ts';
import type { ItemRecords, Mapping } from '../mapping/mapping.ts';
import type { Plan } from '../mapping/plan.ts';
import { withPreset } from '../mapping/presets/index.ts';
import type { Target } from '../mapping/target.ts';
import { dateIssues } from './dates.ts';
import { examIssues } from './exam.ts';
import { makePlan } from './make-plan.ts';
import { nameIssues } from './names.ts';
import { mappingSchemaIssues } from './schema-issues.ts';
import { sideNameIssues } from './side-names.ts';
import { tableIssues } from './tables.ts';
import { targetIssues } from './targets.ts';
import { clashIssues, reasonIssues, targetWordIssues } from './words.ts';

export interface MappingOptions {
  /** Default: the built-in catalogue. */
  readonly catalogue?: Catalogue;
  /** What the call may take; default `budgets.legacy`, of a mapping alone `budgets.mapping`. */
  readonly budget?: BudgetOption;
}

/**
 * A mapping, checked against its schema and the catalogue and made ready for use. Nothing is read
 * before this: a word without a meaning or a region that does not exist is told here, with its path.
 *
 * @param value The mapping as plain data.
 * @param options The catalogue; see {@link MappingOptions}.
 * @returns The plan of the conversion. It fails when anything is wrong.
 * @example
 * const plan = orThrow('prepare the mapping', prepareMapping(mapping));
 */
export function prepareMapping(value: unknown, options: MappingOptions = {}): Outcome<Plan> {
  return within(
    'mapping',
    options.budget,
    () => prepared(value, options),
    (why) => failure([endedIssue(why)]),
  );
}

function prepared(value: unknown, options: MappingOptions): Outcome<Plan> {
  const catalogue = options.catalogue ?? builtInCatalogue;
  const whole = withPreset(value, catalogue);
  const schema = mappingSchemaIssues(whole);
  if (hasErrors(schema)) return failure(schema);
  const given = whole as Mapping; // the schema, generated from this type, has accepted it
  const mapping = completeMapping(withPairs(given));
  const issues = [
    ...schema,
    ...pairIssues(given),
    ...syntaxIssues(given),
    ...nameIssues(mapping),
    ...examIssues(mapping.exam, catalogue),
    ...dateIssues(mapping),
    ...operationIssues(mapping),
    ...tableIssues(mapping, catalogue),
    ...fieldIssues(mapping, catalogue),
    ...(mapping.items ?? []).flatMap((items, at) =>
      itemIssues(items, ['items', at], mapping, catalogue),
    ),
  ];
  return hasErrors(issues) ? failure(issues) : success(makePlan(mapping, catalogue), issues);
}

/** The mapping with the fields of each pair as fields of their own. */
function withPairs(mapping: Mapping): Mapping {
  const { pairs, fields, ...rest } = mapping;
  if (pairs === undefined) return mapping;
  const sided = pairs.flatMap(({ right, left, target }) => [
    [right, { ...target, side: 'right' }],
    [left, { ...target, side: 'left' }],
  ]);
  // Whether a target takes a side is told by `pairIssues`.
  const both = Object.fromEntries(sided) as { readonly [name: string]: Target };
  return { ...rest, fields: { ...both, ...fields } };
}

/** A name that stands twice, and a pair whose target has a side already. */
function pairIssues({ pairs = [], fields = {} }: Mapping): Issue[] {
  const seen = new Set(Object.keys(fields));
  return pairs.flatMap(({ right, left, target }, at): Issue[] => {
    const twice = [
      ['right', right],
      ['left', left],
    ].flatMap(([part = '', name = '']) => {
      const isTwice = seen.has(name);
      seen.add(name);
      const facts = { reason: 'field-use', property: 'fields', code: 'pairs' } as const;
      return isTwice ? [issue('ambiguous-mapping', ['pairs', at, part], facts)] : [];
    });
    return 'side' in target || 'sideFrom' in target
      ? [...twice, issue('side-conflict', ['pairs', at, 'target'], { reason: 'pair' })]
      : twice;
  });
}

/** Patterns that can not be followed in one way alone, and tables of words in which none has a place. */
function operationIssues({ cells = [] }: Mapping): Issue[] {
  return cells.flatMap((operation, at) => {
    if (operation.do !== 'pick') return [];
    return operation.patterns.flatMap((pattern, index) =>
      patternSteps(pattern) === undefined
        ? [issue('invalid-value', ['cells', at, 'patterns', index], { reason: 'cell-pattern' })]
        : [],
    );
  });
}

function fieldIssues(mapping: Mapping, catalogue: Catalogue): Issue[] {
  const nothing: Supplied = { side: false, region: false, method: false, modality: false };
  return Object.entries(mapping.fields ?? {}).flatMap(([name, target]) => {
    const path = ['fields', name];
    return [
      ...oneTarget(target, path, nothing, mapping, catalogue),
      ...sideNameIssues(name, target, path),
    ];
  });
}

function itemIssues(
  items: ItemRecords,
  path: Path,
  mapping: Mapping,
  catalogue: Catalogue,
): Issue[] {
  const supplied: Supplied = {
    side: items.side !== undefined,
    region: items.region !== undefined,
    method: items.method !== undefined,
    modality: items.modality !== undefined,
  };
  const issues = clashIssues(items.status?.words, [...path, 'status', 'words'], mapping);
  for (const [word, meaning] of Object.entries(items.status?.words ?? {})) {
    append(issues, reasonIssues(meaning, [...path, 'status', 'words', word], catalogue));
  }
  for (const [code, target] of Object.entries(items.map)) {
    const at = [...path, 'map', code];
    append(issues, oneTarget(target, at, supplied, mapping, catalogue));
    append(issues, sideNameIssues(code, target, at));
  }
  const { otherwise } = items;
  if (otherwise !== undefined) {
    append(issues, oneTarget(otherwise, [...path, 'otherwise'], supplied, mapping, catalogue));
  }
  return issues;
}

function oneTarget(
  target: Target,
  path: Path,
  supplied: Supplied,
  mapping: Mapping,
  catalogue: Catalogue,
): Issue[] {
  const issues = [
    ...targetIssues(target, path, supplied, { catalogue, mapping }),
    ...targetWordIssues(target, path, mapping, catalogue),
  ];
  if ('words' in target && typeof target.words === 'object') {
    append(issues, clashIssues(target.words, [...path, 'words'], mapping));
    for (const [word, meaning] of Object.entries(target.words)) {
      append(issues, reasonIssues(meaning, [...path, 'words', word], catalogue));
    }
  }
  return issues;
}
