import { atDomain, atType, extension } from '../fault-kinds.ts';
import { atProperty, type Fault, type Json, type NamedFault } from '../places.ts';
import { core } from './core.ts';

const UCUM = 'http://unitsofmeasure.org';

/** Extensions of HL7 and of others, by value, place and parts. */
export const oddExtensions: readonly NamedFault[] = [
  [
    'extension-translation-at-root',
    extension({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-without-content',
    onText({ url: core('translation'), extension: [{ url: 'lang', valueCode: 'de' }] }),
  ],
  [
    'extension-translation-sound',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-of-unknown-part',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'de' },
        { url: 'content', valueString: 'x' },
        { url: 'banana', valueString: 'x' },
      ],
    }),
  ],
  [
    'extension-translation-of-language-words',
    onText({
      url: core('translation'),
      extension: [
        { url: 'lang', valueCode: 'German words' },
        { url: 'content', valueString: 'x' },
      ],
    }),
  ],
  ['extension-original-text-sound', onText({ url: core('originalText'), valueString: 'x' })],
  ['extension-rendering-of-number', onText({ url: core('rendering-style'), valueInteger: 1 })],
  [
    'extension-birth-place-elsewhere',
    extension({ url: core('patient-birthPlace'), valueAddress: { city: 'x' } }),
  ],
  [
    'extension-absent-reason-twice',
    onText(
      { url: core('data-absent-reason'), valueCode: 'unknown' },
      { url: core('data-absent-reason'), valueCode: 'masked' },
    ),
  ],
  ['extension-ordinal-at-root', extension({ url: core('ordinalValue'), valueDecimal: 1 })],
  ['extension-without-value-of-hl7', extension({ url: core('data-absent-reason') })],
  [
    'extension-with-version-in-url',
    extension({ url: 'http://vineyard.example/e|1.0', valueString: 'x' }),
  ],
  [
    'extension-of-urn',
    extension({ url: 'urn:uuid:c757873d-ec9a-4326-a141-556f43239520', valueString: 'x' }),
  ],
  [
    'extension-of-malformed-value',
    extension({ url: 'http://vineyard.example/e', valueDate: '2021-13-01' }),
  ],
  [
    'extension-of-unknown-unit',
    extension({
      url: 'http://vineyard.example/e',
      valueQuantity: { value: 1, system: UCUM, code: 'banana' },
    }),
  ],
  [
    'extension-of-value-as-list',
    extension({ url: 'http://vineyard.example/e', valueString: ['x'] }),
  ],
  ['extension-of-null-value', extension({ url: 'http://vineyard.example/e', valueString: null })],
  [
    'extension-of-value-extension',
    extension({ url: 'http://vineyard.example/e', valueExtension: { url: 'x' } }),
  ],
  [
    'extension-with-primitive-extra',
    extension({
      url: 'http://vineyard.example/e',
      _valueString: { extension: [{ url: core('data-absent-reason'), valueCode: 'unknown' }] },
    }),
  ],
  [
    'extension-as-modifier',
    atDomain(
      (it) =>
        (it['modifierExtension'] = [{ url: core('data-absent-reason'), valueCode: 'unknown' }]),
    ),
  ],
  ['modifier-as-extension', extension({ url: core('request-doNotPerform'), valueBoolean: true })],
  [
    'modifier-in-a-data-type',
    atType('CodeableConcept', {
      text: 'x',
      modifierExtension: [{ url: 'http://vineyard.example/e', valueBoolean: true }],
    }),
  ],
];

function onText(...extensions: Json[]): Fault {
  return atProperty(
    ({ type, list }) => type === 'string' && !list,
    (holder, name) => (holder[`_${name}`] = { extension: extensions }),
  );
}
