import { isObject } from '../../../../src/validate/walk/json.ts';
import { atRoot } from '../fault-kinds.ts';
import { atProperty, type NamedFault } from '../places.ts';
/** Properties whose list, name or extra (`_name`) has another form, whatever their type. */
export const propertyFaults: readonly NamedFault[] = [
  [
    'list-of-lists',
    atProperty(
      ({ list }) => list,
      (holder, name) => (holder[name] = [holder[name]]),
    ),
  ],
  [
    'list-of-null',
    atProperty(
      ({ list }) => list,
      (holder, name) => (holder[name] = [null]),
    ),
  ],
  [
    'list-with-null',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? [...value, null] : value;
      },
    ),
  ],
  [
    'list-with-empty-object',
    atProperty(
      ({ list, primitive }) => list && !primitive,
      (holder, name) => {
        const value = holder[name];
        holder[name] = Array.isArray(value) ? [...value, {}] : value;
      },
    ),
  ],
  [
    'optional-element-missing',
    atProperty(
      ({ required, list, choice }) => !required && !list && choice === undefined,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'optional-list-missing',
    atProperty(
      ({ required, list }) => !required && list,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'required-choice-missing',
    atProperty(
      ({ choice }) => choice?.required === true,
      (holder, name) => {
        delete holder[name];
      },
    ),
  ],
  [
    'member-doubled',
    atProperty(
      ({ list }) => list,
      (holder, name) => {
        const value = holder[name];
        if (Array.isArray(value)) holder[name] = [...value, value[0]];
      },
    ),
  ],
  [
    'name-in-capitals',
    atProperty(
      ({ choice }) => choice === undefined,
      (holder, name) => {
        holder[name.charAt(0).toUpperCase() + name.slice(1)] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'choice-of-unknown-type',
    atProperty(
      ({ choice }) => choice !== undefined,
      (holder, name, { choice }) => {
        holder[`${choice?.name}Banana`] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'choice-without-type',
    atProperty(
      ({ choice }) => choice !== undefined,
      (holder, name, { choice }) => {
        holder[choice?.name ?? ''] = holder[name];
        delete holder[name];
      },
    ),
  ],
  [
    'extra-empty',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = {}),
    ),
  ],
  [
    'extra-as-text',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = 'x'),
    ),
  ],
  [
    'extra-with-value',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) => (holder[`_${name}`] = { value: 'x' }),
    ),
  ],
  [
    'extra-of-an-object',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => (holder[`_${name}`] = { id: 'x' }),
    ),
  ],
  [
    'extra-with-extension-of-nothing',
    atProperty(
      ({ primitive, list }) => primitive && !list,
      (holder, name) =>
        (holder[`_${name}`] = { extension: [{ url: 'https://vineyard.example/e' }] }),
    ),
  ],
  [
    'extra-list-too-long',
    atProperty(
      ({ primitive, list }) => primitive && list,
      (holder, name) =>
        (holder[`_${name}`] = [null, null, null, null, null, null, null, { id: 'x' }]),
    ),
  ],
  ['comments-of-version-2', atRoot((resource) => (resource['fhir_comments'] = ['x']))],
  [
    'type-of-resource-in-data-type',
    atProperty(
      ({ primitive, list, type }) => !primitive && !list && type !== 'Resource',
      (holder, name) => {
        const value = holder[name];
        if (isObject(value)) holder[name] = { resourceType: 'Patient', ...value };
      },
    ),
  ],
];
