import { expect, test } from 'vitest';
import { validateBundle as validateR4 } from '../../../src/validate/versions/r4.ts';
import { changed } from '../example.ts';
import { observation, run } from './stage-cases.ts';

// The stages of elements, data types and narratives.

const hello = {
  extension: [
    { url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'unknown' },
  ],
};

run('elements', [
  ['the base is sound', ['id'], 'a'],
  [
    'formats.html#choice: one type at a time',
    ['valueString'],
    'large',
    'error contradiction valueString',
  ],
  ['element.html#id: an id', ['code', 'id'], 'x'],
  ['ele-1: an id alone is no content', ['bodySite'], { id: 'x' }, 'error empty-value bodySite'],
  [
    'json.html#null: a null needs an extension in its place',
    ['method'],
    { coding: [{ userSelected: null }] },
    'error wrong-type method.coding.0.userSelected',
  ],
  ['json.html#primitive: an extension in place of a value', ['_issued'], hello],
  [
    'json.html#primitive: nothing in place of a value',
    ['_issued'],
    { id: 'x' },
    'error empty-value _issued',
  ],
  [
    'extension-definitions.html#Extension.value_x_: a choice that must be there',
    ['note', 0, 'text'],
    undefined,
    'error missing-property note.0.text',
  ],
]);

run('elements', [
  ['element.html#id', ['valueQuantity', 'id'], 'x y', 'error invalid-value valueQuantity.id'],
]);

test('element.html#id: two elements of one resource with the same id', () => {
  const one = changed(observation, ['code', 'id'], 'x');
  const { issues } = validateR4(changed(one, ['valueQuantity', 'id'], 'x'));
  expect(issues.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
    'duplicate-id valueQuantity.id',
  ]);
});

run('data types', [
  ['datatypes.html#dateTime: the day exists', ['effectiveDateTime'], '2028-02-29'],
  [
    'datatypes.html#dateTime: no leap year',
    ['effectiveDateTime'],
    '2026-02-29',
    'error impossible-date effectiveDateTime',
  ],
  [
    'datatypes.html#dateTime: nor in 1900',
    ['effectiveDateTime'],
    '1900-02-29',
    'error impossible-date effectiveDateTime',
  ],
  ['datatypes.html#dateTime: a leap second', ['effectiveDateTime'], '2016-12-31T23:59:60Z'],
  [
    'datatypes.html#dateTime: a zone that exists',
    ['effectiveDateTime'],
    '2026-03-02T10:00:00+14:00',
  ],
  [
    'datatypes.html#instant: a day that does not exist',
    ['issued'],
    '2026-04-31T10:00:00Z',
    'error impossible-date issued',
  ],
  [
    'datatypes.html#string: space at the end',
    ['code', 'text'],
    'Swelling ',
    'warning invalid-value code.text',
  ],
  [
    'datatypes.html#string: nothing but space',
    ['note', 0, 'text'],
    '  ',
    'warning empty-value note.0.text',
  ],
  ['datatypes.html#string: 1 MB', ['code', 'text'], 'x'.repeat(1024 * 1024)],
  [
    'datatypes.html#string: more than 1 MB',
    ['code', 'text'],
    'x'.repeat(1024 * 1024 + 1),
    'error too-large code.text',
  ],
  [
    'datatypes.html#uuid',
    ['identifier', 0, 'system'],
    'urn:uuid:7',
    'error invalid-value identifier.0.system',
  ],
  [
    'datatypes.html#oid',
    ['identifier', 0, 'system'],
    'urn:oid:3.1',
    'error invalid-value identifier.0.system',
  ],
  ['datatypes.html#oid: sound', ['identifier', 0, 'system'], 'urn:oid:2.16.840.1'],
  [
    'datatypes.html#Identifier: an absolute system',
    ['identifier', 0, 'system'],
    'ids',
    'error invalid-value identifier.0.system',
  ],
  [
    'datatypes.html#Identifier: a URI where the system says so',
    ['identifier', 0],
    { system: 'urn:ietf:rfc:3986', value: '7' },
    'error invalid-value identifier.0.value',
  ],
  [
    'datatypes.html#canonical',
    ['meta'],
    { profile: ['worker'] },
    'error invalid-value meta.profile.0',
    'warning unchecked-profile meta.profile.0',
  ],
  [
    'datatypes.html#base64Binary',
    ['contained', 0, 'photo', 0, 'data'],
    'aGVsbG8',
    'error invalid-value contained.0.photo.0.data',
  ],
  [
    'datatypes.html#Attachment: size of the data',
    ['contained', 0, 'photo', 0, 'size'],
    6,
    'error contradiction contained.0.photo.0.size',
  ],
  // SHA-1 of `hello`, RFC 3174.
  [
    'datatypes.html#Attachment: hash of the data',
    ['contained', 0, 'photo', 0, 'hash'],
    'qvTGHdzF6KLavt4PO0gs2a6pQ00=',
  ],
  [
    'datatypes.html#Attachment: hash of other data',
    ['contained', 0, 'photo', 0, 'hash'],
    'qvTGHdzF6KLavt4PO0gs2a6pQ01=',
    'error contradiction contained.0.photo.0.hash',
  ],
]);

const div = (inner: string): string => `<div xmlns="http://www.w3.org/1999/xhtml">${inner}</div>`;
const bad = 'error invalid-narrative text.div';

run('narrative', [
  [
    'narrative.html#xhtml: tables and lists',
    ['text', 'div'],
    div('<table><tr><td>1</td></tr></table><ul><li>2</li></ul>'),
  ],
  ['narrative.html#xhtml: no script', ['text', 'div'], div('<script>1</script>'), bad],
  ['narrative.html#xhtml: no event', ['text', 'div'], div('<b onclick="go()">1</b>'), bad],
  ['narrative.html#xhtml: no form', ['text', 'div'], div('1 <input/>'), bad],
  ['narrative.html#xhtml: well formed', ['text', 'div'], div('<b>1'), bad],
  ['narrative.html#xhtml: only known entities', ['text', 'div'], div('&secret;'), bad],
  ['narrative.html#xhtml: the namespace', ['text', 'div'], '<div>1</div>', bad],
  ['txt-2: some content', ['text', 'div'], div(' '), bad],
  [
    'narrative.html#id: a link to nothing',
    ['text', 'div'],
    div('<a href="#z">1</a>'),
    'error unresolved-reference text.div',
  ],
  ['narrative.html#id: a link to a contained resource', ['text', 'div'], div('<a href="#p">1</a>')],
]);
