import type { StateWithReason, WordTable } from '../../convert/mapping/mapping.ts';
import type { Target } from '../../convert/mapping/target.ts';
import type { Code } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { AttributeConcept, FindingConcept, Lean, TestPoint } from '../../terminology/types.ts';
import { itemCodes, stateWord } from './item.ts';

/** Word tables that several items share. */
export const sharedWords = (catalogue: Catalogue): { readonly [table: string]: WordTable } => ({
  presence: same(['present', 'absent', 'indeterminate', 'suspected', 'confirmed']),
  answer: same(['yes', 'no', 'unsure', 'declined', 'not-asked']),
  state: {
    ...same(['normal', 'abnormal']),
    ...states(catalogue, 'partial', 'partial'),
    ...states(catalogue, 'not-examined', 'not-examined'),
    ...states(catalogue, 'not-applicable', 'not-applicable'),
  },
  'not-tested': states(catalogue, 'not-tested', 'not-examined'),
});

/** The meaning of every item: one for each concept of the catalogue that an item can be about. */
export function itemTargets(catalogue: Catalogue): { readonly [code: string]: Target } {
  const targets: [string, Target][] = [
    [itemCodes.state, { kind: 'region-state', words: 'state' }],
    [itemCodes.note, { kind: 'note' }],
    ...[...catalogue.findings.values()].flatMap((row) => findingTargets(row, catalogue)),
    ...[...catalogue.testPoints.values()].flatMap((row) => testTargets[row.group](row, catalogue)),
    ...measureTargets(catalogue),
    ...scaleTargets(catalogue),
    ...symptomTargets(catalogue),
    ...conditionTargets(catalogue),
  ];
  return Object.fromEntries(targets);
}

/** Words that are codes. */
export function same(codes: Iterable<Code>): { readonly [word: string]: Code } {
  return Object.fromEntries([...codes].map((code) => [code, code]));
}

/** A word for a state with each reason of the catalogue. */
function states(catalogue: Catalogue, word: string, state: StateWithReason['state']): WordTable {
  return Object.fromEntries(
    [...catalogue.reasons.keys()].map((reason) => [stateWord(word, reason), { state, reason }]),
  );
}

function findingTargets(row: Lean<FindingConcept>, catalogue: Catalogue): [string, Target][] {
  const finding = row.code;
  const attributes = [...catalogue.attributes.values()].filter(
    ({ family }) => family === row.attributes,
  );
  return [
    [itemCodes.finding(finding), { kind: 'finding', finding, words: 'presence' }],
    ...attributes.map((attribute): [string, Target] => [
      itemCodes.attribute(finding, attribute.code),
      { kind: 'attribute', finding, ...attributeParts(attribute) },
    ]),
  ];
}

function attributeParts(
  row: Lean<AttributeConcept>,
): Omit<Target & { kind: 'attribute' }, 'kind' | 'finding'> {
  const attribute = row.code;
  switch (row.type) {
    case 'boolean':
      return { attribute, words: same(['yes', 'no']) };
    case 'code':
      return { attribute, words: same((row.values ?? []).map(({ code }) => code)) };
    case 'quantity':
      return { attribute, ...(row.unit !== undefined && { unit: row.unit }) };
    case 'count':
      return { attribute };
  }
}

type PointTargets = (row: Lean<TestPoint>, catalogue: Catalogue) => [string, Target][];

const movementTargets: PointTargets = ({ code: test, results }, catalogue) => [
  [itemCodes.movement(test), { kind: 'movement', test, words: testWords(results, catalogue) }],
];

const testTargets: { readonly [G in TestPoint['group']]: PointTargets } = {
  sensation: sensationTargets,
  'facial-movement': movementTargets,
  movement: movementTargets,
  function: ({ code: test, results }, catalogue) => [
    [
      itemCodes.functionTest(test),
      { kind: 'function-test', test, words: testWords(results, catalogue) },
    ],
  ],
};

function notTested(catalogue: Catalogue): WordTable {
  return states(catalogue, 'not-tested', 'not-examined');
}

/** Results of a test as words, and that there is none, by its reason. */
function testWords(results: readonly Code[] = [], catalogue: Catalogue): WordTable {
  const { testResults } = catalogue;
  return {
    ...same(results.filter((code) => testResults.get(code)?.untested !== true)),
    ...notTested(catalogue),
  };
}

function sensationTargets(row: Lean<TestPoint>, catalogue: Catalogue): [string, Target][] {
  const test = row.code;
  const untested = notTested(catalogue);
  const results = [...catalogue.sensationResults.values()].filter((one) => one.untested !== true);
  const words = { ...same(results.map(({ code }) => code)), ...untested };
  const compared = { ...same(['equal', 'right-less', 'left-less']), ...untested };
  return (row.modalities ?? []).flatMap((modality): [string, Target][] => [
    [itemCodes.sensation(test, modality), { kind: 'sensation', point: test, modality, words }],
    [
      itemCodes.comparison(test, modality),
      { kind: 'sensation-comparison', point: test, modality, words: compared },
    ],
  ]);
}

function measureTargets({ measures }: Catalogue): [string, Target][] {
  return [...measures.values()]
    .filter(({ rangeOf, scale }) => rangeOf === undefined && scale === undefined)
    .map(({ code, unit }) => [
      itemCodes.measurement(code),
      { kind: 'measurement', measure: code, unit, words: 'not-tested' },
    ]);
}

function scaleTargets({ scales }: Catalogue): [string, Target][] {
  return [...scales.values()].flatMap(({ code, versions, grades }) =>
    versions.map((version): [string, Target] => [
      itemCodes.scale(code, version),
      {
        kind: 'scale-score',
        scale: code,
        version,
        ...(grades !== undefined && { words: same(grades.map((grade) => grade.code)) }),
      },
    ]),
  );
}

const tellers = [undefined, 'patient', 'relative', 'carer', 'interpreter', 'other'] as const;

function symptomTargets({ symptoms }: Catalogue): [string, Target][] {
  return [...symptoms.keys()].flatMap((symptom) =>
    tellers.map((toldBy): [string, Target] => [
      itemCodes.symptom(symptom, toldBy),
      { kind: 'symptom', symptom, words: 'answer', ...(toldBy !== undefined && { toldBy }) },
    ]),
  );
}

function conditionTargets({ conditions }: Catalogue): [string, Target][] {
  return [...conditions.values()].map(({ code, values }) => [
    itemCodes.condition(code),
    {
      kind: 'condition',
      condition: code,
      words: same(values === undefined ? ['yes'] : values.map((value) => value.code)),
    },
  ]);
}
