import { describe, expect, test } from 'vitest';
import { thoroughR4 } from '../../../src/validate/thorough/thorough.ts';
import { type ValidateOptions, validateBundle } from '../../../src/validate/versions/all-r4.ts';

// FHIRPath and maps in definitions, by the words of the elements that hold them. What HL7's validator
// says of the published ones stands in the corpora of tests/reference.

const text = { status: 'generated', div: '<div xmlns="http://www.w3.org/1999/xhtml">x</div>' };

function head(resourceType: string, more: object): object {
  const url = `https://clinic.example/fhir/${resourceType}/x`;
  return { resourceType, id: 'x', text, url, name: 'X', status: 'draft', ...more };
}

function told(resource: object, options?: ValidateOptions): object {
  const { conformance, issues, unchecked } = validateBundle(resource, options);
  const errors = issues.filter(({ severity }) => severity === 'error');
  return {
    conformance,
    errors: errors.map(({ facts, path }) => `${facts.reason} ${path.join('.')}`),
    unchecked: unchecked.map(({ path }) => path.join('.')),
  };
}

const sound = { conformance: 'conforms', errors: [], unchecked: [] };

function refused(...errors: readonly string[]): object {
  return { conformance: 'does-not-conform', errors, unchecked: [] };
}

/** https://hl7.org/fhir/R4/searchparameter-definitions.html#SearchParameter.expression */
describe('search parameters', () => {
  const search = (base: readonly string[], expression: string, more: object = {}): object =>
    head('SearchParameter', {
      ...{ description: 'x', code: 'x', type: 'string', base, expression },
      ...more,
    });

  test.each([
    [['Patient'], 'Patient.name.family'],
    [['Patient'], 'name.family'],
    [['Patient', 'Person'], 'Patient.name | Person.name'],
    [['Patient'], 'Patient.deceased.exists() and Patient.deceased != false'],
    [['Observation'], '(Observation.value as Quantity).code'],
    [['Observation'], "Observation.extension('https://clinic.example/x').value.code"],
    [['Observation'], 'Observation.subject.where(resolve() is Patient)'],
    [['Bundle'], 'Bundle.entry[0].resource.anything'],
    [['Resource'], 'Resource.meta.profile'],
    [['DomainResource'], 'Patient.name'],
  ])('of %s: %s', (base, expression) => {
    expect(told(search(base, expression))).toEqual(sound);
  });

  test.each([
    [['Patient'], 'Patient.banana'],
    [['Patient'], 'Patient.name | Patient.naem'],
    [['Observation'], 'Patient.name'],
    [['Observation'], 'Observation.component.where(banana = 1)'],
    [['Observation'], '(Observation.value as Quantity).coding'],
  ])('of %s leads nowhere: %s', (base, expression) => {
    expect(told(search(base, expression))).toEqual(refused('element-path expression'));
  });

  test('say what is expected of servers, as US Core does', () => {
    const url = 'http://hl7.org/fhir/StructureDefinition/capabilitystatement-expectation';
    const more = { multipleOr: true, _multipleOr: { extension: [{ url, valueCode: 'MAY' }] } };
    expect(told(search(['Patient'], 'Patient.name', more))).toEqual(sound);
  });

  test('a component starts from what the parameter gives', () => {
    const composite = (inner: string): object =>
      search(['Observation'], 'Observation.component', {
        type: 'composite',
        component: [{ definition: 'http://hl7.org/fhir/SearchParameter/x', expression: inner }],
      });
    expect(told(composite('code'))).toEqual(sound);
    expect(told(composite('focus'))).toEqual(refused('element-path component.0.expression'));
  });

  test('what is no FHIRPath is told at the thorough level, and as unchecked at the fast one', () => {
    const broken = search(['Patient'], 'Patient.(');
    const open = { conformance: 'not-fully-checked', errors: [], unchecked: ['expression'] };
    expect(told(broken)).toEqual(open);
    const thorough = { level: 'thorough', engine: thoroughR4 } as const;
    expect(told(broken, thorough)).toEqual(refused('fhirpath expression'));
    // A quantity, which the reader of the fast level does not take.
    const quantity = search(['Observation'], "Observation.value > 4 'mm'");
    expect(told(quantity)).toEqual(open);
  });
});

/** https://hl7.org/fhir/R4/structuremap-definitions.html */
describe('maps', () => {
  const map = (...rule: readonly object[]): object =>
    head('StructureMap', {
      group: [
        {
          name: 'main',
          typeMode: 'none',
          input: [
            { name: 'from', type: 'ActivityDefinition', mode: 'source' },
            { name: 'to', type: 'Task', mode: 'target' },
          ],
          rule,
        },
      ],
    });
  const target = (context: string, element: string): object => ({
    ...{ context, contextType: 'variable', element, transform: 'copy' },
  });
  const open = { conformance: 'not-fully-checked', errors: [], unchecked: ['group'] };
  const wrong = (error: string): object => ({
    ...{ conformance: 'does-not-conform', errors: [error], unchecked: ['group'] },
  });

  test('variables and elements are checked, the transforms are told as unchecked', () => {
    const inner = { name: 'b', source: [{ context: 'c', element: 'coding' }] };
    const outer = { name: 'a', source: [{ context: 'from', element: 'code', variable: 'c' }] };
    expect(told(map({ ...outer, target: [target('to', 'code')], rule: [inner] }))).toEqual(open);
  });

  test('a variable ends with its rule', () => {
    const first = { name: 'a', source: [{ context: 'from', variable: 'c' }] };
    const second = { name: 'b', source: [{ context: 'c' }] };
    expect(told(map(first, second))).toEqual(wrong('map-variable group.0.rule.1.source.0.context'));
  });

  test('an element that the type does not have', () => {
    const source = [{ context: 'from' }];
    expect(told(map({ name: 'a', source, target: [target('to', 'banana')] }))).toEqual(
      wrong('element-path group.0.rule.0.target.0.element'),
    );
  });
});

/** https://hl7.org/fhir/R4/defining-extensions.html#context */
describe('contexts of extensions', () => {
  const extension = (type: string, expression: string): object =>
    head('StructureDefinition', {
      ...{ kind: 'complex-type', abstract: false, type: 'Extension', derivation: 'constraint' },
      baseDefinition: 'http://hl7.org/fhir/StructureDefinition/Extension',
      context: [{ type, expression }],
      differential: { element: [{ id: 'Extension', path: 'Extension' }] },
    });
  const errors = (resource: object): unknown => Reflect.get(told(resource), 'errors');

  test('that are paths lead to an element', () => {
    expect(errors(extension('element', 'ElementDefinition.binding.valueSet'))).toEqual([]);
    // As guides of HL7 write it, through a Reference.
    expect(errors(extension('element', 'Patient.contact.organization.identifier'))).toEqual([]);
    expect(errors(extension('element', 'Patient.contact.banana'))).toEqual([
      'element-path context.0.expression',
    ]);
  });

  test('that are FHIRPath are held to its form', () => {
    expect(errors(extension('fhirpath', 'descendants()'))).toEqual([]);
    const broken = extension('fhirpath', 'descendants(');
    expect(validateBundle(broken).unchecked).toContainEqual(
      expect.objectContaining({ path: ['context', 0, 'expression'] }),
    );
  });
});
