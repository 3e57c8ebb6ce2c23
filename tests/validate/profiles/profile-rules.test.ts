import fhirpath from 'fhirpath';
import modelOfR4 from 'fhirpath/fhir-context/r4';
import { describe, expect, test } from 'vitest';
import { ruleOf } from '../../../src/validate/profiles/rules/rule.ts';
import { expressions } from '../../../src/validate/tables/r4-expressions.ts';

// Rules of profiles at the fast level, held to the library fhirpath on the same data: where this
// library gives a verdict it must be the same, and of what is common it must give one.

const observation = {
  resourceType: 'Observation',
  id: 'row-7',
  extension: [{ url: 'https://vineyard.example/shift', valueCode: 'early' }],
  status: 'final',
  category: [
    { coding: [{ system: 'https://vineyard.example/kinds', code: 'skin' }] },
    { text: 'harvest check' },
  ],
  code: { coding: [{ system: 'http://loinc.org', code: '8310-5' }], text: 'Skin' },
  subject: { reference: 'Patient/picker-4', display: 'A picker' },
  effectiveDateTime: '2026-09-12',
  _issued: { extension: [{ url: 'https://vineyard.example/when', valueString: 'at noon' }] },
  valueQuantity: { value: 4, unit: 'mm', system: 'http://unitsofmeasure.org', code: 'mm' },
  component: [
    { code: { text: 'left' }, valueString: 'rough' },
    { code: { text: 'right' }, valueInteger: 3 },
    { code: { text: 'middle' }, dataAbsentReason: { text: 'covered' } },
  ],
};

const rules: readonly string[] = [
  'status.exists()',
  'status.empty()',
  "status = 'final' implies effective.exists()",
  "status != 'final' or component.count() > 3",
  'value.exists() xor dataAbsentReason.exists()',
  'value.ofType(Quantity).exists()',
  'value is Quantity',
  'value.ofType(string).empty()',
  '(value as Quantity).unit.exists()',
  'value.ofType(Quantity).value > 3.5',
  'value.ofType(Quantity).value < 3',
  "code.coding.where(system = 'http://loinc.org').exists()",
  "code.coding.where(system = 'http://loinc.org' and code = '8310-5').count() = 1",
  'component.all(value.exists() or dataAbsentReason.exists())',
  'component.where(value.exists()).count() = 2',
  'component.code.text.distinct().count() = component.count()',
  'component.code.text.isDistinct()',
  'component[0].value.is(string)',
  "component.first().code.text = 'left'",
  "component.last().code.text = 'left'",
  "component.exists(code.text = 'middle')",
  "component.where(code.text.startsWith('l') or code.text.endsWith('e')).count() = 2",
  "subject.reference.matches('^Patient/[a-z0-9-]+$')",
  "subject.reference.contains('picker')",
  "subject.reference.substring(0, 7) = 'Patient'",
  "subject.reference.indexOf('/') = 7",
  'subject.display.length() < 9',
  "extension('https://vineyard.example/shift').value = 'early'",
  "extension.where(url = 'https://vineyard.example/shift').value.exists()",
  "extension.url.startsWith('https:')",
  'issued.exists()',
  'issued.hasValue()',
  'issued.hasValue().not()',
  "issued.extension('https://vineyard.example/when').value = 'at noon'",
  'effective.hasValue()',
  "('skin' | 'hair') contains category.coding.code.first()",
  "category.coding.code.first() in ('skin' | 'hair')",
  "category.coding.code.subsetOf('skin' | 'hair')",
  "iif(status = 'final', value.exists(), true)",
  'component.select(code.exists()).allTrue()',
  "category.coding.code & '-x' = 'skin-x'",
  'note.all(text.exists())',
  'note.exists().not()',
  'note.text.length() > 3',
  '%resource.status = status',
  "id.matches('row-[0-9]+')",
  "id.lower() = 'row-7' and id.upper() = 'ROW-7'",
  "code.text ~ 'skin'",
  'component.value.count() = 2 and (1 + 2 * 3 = 7)',
  'component.skip(1).count() = 2 and component.take(1).count() = 1 and component.tail().count() = 2',
  'category.coding.union(code.coding).count() = 2',
  'code.coding.intersect(category.coding).empty()',
  'Observation.status.exists()',
  'status.toString().length() = 5',
  '-1 < component.count()',
  '{}.empty()',
  '(value.exists().toInteger() + component.exists().toInteger() * 5) >= 6',
  'descendants().text.isDistinct()',
];

const compiled = new Map<string, ReturnType<typeof fhirpath.compile>>();

function theirs(expression: string, resource: object): string {
  const run =
    compiled.get(expression) ??
    fhirpath.compile({ base: 'Observation', expression }, modelOfR4, { async: false });
  compiled.set(expression, run);
  const result = run(resource, { resource, rootResource: resource }) as unknown[]; // async is false
  return result.length > 0 && result.every((item) => item === true) ? 'holds' : 'fails';
}

function ours(expression: string, resource: Readonly<Record<string, unknown>>): string {
  const rule = ruleOf(expression);
  const around = { resource, root: resource, resolve: () => undefined };
  return rule?.verdict({ value: resource, type: undefined }, around) ?? 'undecided';
}

/** The observation without each of its parts in turn, so that each rule meets both verdicts. */
const variants = [
  observation,
  ...Object.keys(observation)
    .filter((name) => name !== 'resourceType')
    .map((name) => Object.fromEntries(Object.entries(observation).filter(([key]) => key !== name))),
  { ...observation, component: observation.component.slice(0, 1) },
  { ...observation, valueQuantity: undefined, valueString: 'rough' },
].map((variant) => JSON.parse(JSON.stringify(variant)) as Record<string, unknown>);

describe('the verdict is that of the library fhirpath', () => {
  test.each(rules)('%s', (expression) => {
    const found = variants.map((variant) => ours(expression, variant));
    expect(found).toEqual(variants.map((variant) => theirs(expression, variant)));
  });
});

test('of the published rules of R4 nearly all compile', () => {
  const all = [
    ...new Set(
      Object.values(expressions)
        .flat()
        .map(({ expression }) => expression),
    ),
  ];
  const not = all.filter((expression) => ruleOf(expression) === undefined);
  // Quantities with a unit, and names in the `%` form that only HL7's own tools have.
  expect(not.length / all.length).toBeLessThan(0.05);
});

describe('what is not held is undecided, and never a verdict', () => {
  test.each([
    "code.memberOf('http://hl7.org/fhir/ValueSet/observation-codes')",
    "conformsTo('http://hl7.org/fhir/StructureDefinition/Observation')",
    'effective > today()',
    'effective >= @2026-09',
    'status is code',
    '((',
    "status = 'final",
    '4 days',
    '',
    'component.repeat($this).exists()',
    `${'('.repeat(5_000)}status${')'.repeat(5_000)}`,
    "code.text.matches('(')",
  ])('%#', (expression) => {
    expect(ours(expression, observation)).toBe('undecided');
  });
});
