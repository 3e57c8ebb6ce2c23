import { isObject } from '../../../src/validate/walk/json.ts';
import { atProperty, type Fault } from './places.ts';

/** Faults of structure and of values, each for resources of every type. */
export const faults: readonly (readonly [name: string, fault: Fault])[] = [
  [
    'required-element-missing',
    atProperty(
      ({ required }) => required,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'unknown-property',
    (resource) => {
      resource['notInFhir'] = 'x';
      return true;
    },
  ],
  [
    'list-in-place-of-one',
    atProperty(
      ({ list, choice }) => !list && choice === undefined,
      (holder, name) => {
        holder[name] = [holder[name]];
      },
    ),
  ],
  [
    'one-in-place-of-a-list',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? value[0] : value;
      },
    ),
  ],
  [
    'empty-list',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        holder[name] = [];
      },
    ),
  ],
  [
    'text-in-place-of-an-object',
    atProperty(
      ({ primitive, type }) => !primitive && type !== 'Resource',
      (holder, name) => {
        holder[name] = 'x';
      },
    ),
  ],
  [
    'code-outside-required-list',
    atProperty(
      ({ listed, list }) => listed !== undefined && !list,
      (holder, name) => {
        holder[name] = 'not-a-code-of-the-list';
      },
    ),
  ],
  [
    'number-in-place-of-text',
    atProperty(
      ({ type, list }) => type === 'string' && !list,
      (holder, name) => {
        holder[name] = 12;
      },
    ),
  ],
  [
    'impossible-date',
    atProperty(
      ({ type, list }) => (type === 'date' || type === 'dateTime') && !list,
      (holder, name) => {
        holder[name] = '2021-02-30';
      },
    ),
  ],
  [
    'empty-text',
    atProperty(
      ({ type, list }) => type === 'string' && !list,
      (holder, name) => {
        holder[name] = '';
      },
    ),
  ],
  [
    'text-in-place-of-true',
    atProperty(
      ({ type }) => type === 'boolean',
      (holder, name) => {
        holder[name] = 'true';
      },
    ),
  ],
  [
    'reference-to-a-wrong-type',
    atProperty(
      ({ type, list, to }) =>
        type === 'Reference' && !list && to !== undefined && !to.includes('Linkage'),
      (holder, name) => {
        holder[name] = { reference: 'Linkage/x' };
      },
    ),
  ],
  [
    'extension-without-url',
    (resource) => {
      if (
        resource['resourceType'] === 'Bundle' ||
        resource['resourceType'] === 'Binary' ||
        resource['resourceType'] === 'Parameters'
      )
        return false;
      resource['extension'] = [{ valueString: 'x' }];
      return true;
    },
  ],
  [
    'unknown-modifier-extension',
    (resource) => {
      if (
        resource['resourceType'] === 'Bundle' ||
        resource['resourceType'] === 'Binary' ||
        resource['resourceType'] === 'Parameters'
      )
        return false;
      resource['modifierExtension'] = [
        { url: 'https://vineyard.example/negated', valueBoolean: true },
      ];
      return true;
    },
  ],
  [
    'script-in-the-narrative',
    (resource) => {
      if (!isObject(resource['text'])) return false;
      resource['text'] = {
        ...resource['text'],
        div: '<div xmlns="http://www.w3.org/1999/xhtml"><script>x</script></div>',
      };
      return true;
    },
  ],
  [
    'id-of-other-characters',
    (resource) => {
      resource['id'] = 'not_an_id';
      return true;
    },
  ],
  [
    'null',
    atProperty(
      ({ list, choice }) => !list && choice === undefined,
      (holder, name) => {
        holder[name] = null;
      },
    ),
  ],
  [
    'choice-with-two-types',
    atProperty(
      ({ choice, type }) =>
        choice?.properties.some((each) => /(String|Boolean)$/.test(each)) === true &&
        type !== 'string' &&
        type !== 'boolean',
      (holder, name, property) => {
        const other =
          property.choice?.properties.find((each) => /(String|Boolean)$/.test(each)) ?? '';
        if (holder[name] !== undefined) holder[other] = other.endsWith('String') ? 'x' : true;
      },
    ),
  ],
  [
    'coding-of-a-relative-system',
    atProperty(
      ({ type, list }) => type === 'CodeableConcept' && !list,
      (holder, name) => {
        holder[name] = { coding: [{ system: 'sometable', code: 'x' }] };
      },
    ),
  ],
  [
    'unit-that-ucum-lacks',
    atProperty(
      ({ type, list }) => (type === 'Quantity' || type === 'SimpleQuantity') && !list,
      (holder, name) => {
        holder[name] = { value: 1, system: 'http://unitsofmeasure.org', code: 'miligram' };
      },
    ),
  ],
  [
    'local-reference-to-nothing',
    atProperty(
      ({ type, list }) => type === 'Reference' && !list,
      (holder, name) => {
        holder[name] = { reference: '#nothing' };
      },
    ),
  ],
  [
    'empty-object',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => {
        holder[name] = {};
      },
    ),
  ],
  [
    'integer-with-a-fraction',
    atProperty(
      ({ type, list }) => /^(positiveInt|unsignedInt|integer)$/.test(type) && !list,
      (holder, name) => {
        holder[name] = 1.5;
      },
    ),
  ],
  [
    'uri-with-a-space',
    atProperty(
      ({ type, list }) => (type === 'uri' || type === 'url' || type === 'canonical') && !list,
      (holder, name) => {
        holder[name] = 'https://vineyard.example/a b';
      },
    ),
  ],
];
