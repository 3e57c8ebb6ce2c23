import { isDeepStrictEqual } from 'node:util';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { fromJson } from '../../src/fhir/json/from-json.ts';
import { fhirVersionNumber } from '../../src/fhir/version.ts';
import { fromXml } from '../../src/fhir/xml/from-xml.ts';
import { toXml } from '../../src/fhir/xml/to-xml.ts';
import { type FhirVersion, toBundleOrThrow, toJson } from '../../src/index.ts';
import { orThrow } from '../../src/issues/issue.ts';
import { sampleExams } from '../../src/testing/sample-exam.ts';
import { clinic } from '../clinic.ts';
import { sampled } from '../sampled.ts';

const versions = Object.keys(fhirVersionNumber) as FhirVersion[]; // its keys are the versions
const FHIR = 'xmlns="http://hl7.org/fhir"';

function write(resource: unknown, version: FhirVersion = 'R4'): string {
  return orThrow('write XML', toXml(resource, { fhirVersion: version }));
}

function body(resource: object): string {
  return write({ resourceType: 'Observation', ...resource })
    .replace(/^<\?xml[^>]*>/, '')
    .replace(/^<Observation [^>]*>|<\/Observation>$/g, '');
}

function read(text: string, version: FhirVersion = 'R4') {
  return fromXml(text, { fhirVersion: version });
}

function readBody(content: string): unknown {
  return orThrow('read XML', read(`<Observation ${FHIR}>${content}</Observation>`));
}

function faults(text: string) {
  return read(text).issues.map(({ code }) => code);
}

describe.each(versions)('bundles of seeded exams in %s', (version) => {
  it.each(['compact', 'pretty'])('come back from %s XML as they were', (form) => {
    const exams = [
      ...sampleExams(1, 1, { size: 'small' }),
      ...sampleExams(1, sampled(2, 5), { size: 'edge' }),
    ];
    for (const exam of exams) {
      for (const bundleType of ['collection', 'transaction', 'document'] as const) {
        const bundle = toBundleOrThrow(exam, { ...clinic, fhirVersion: version, bundleType });
        const text = orThrow(
          'write',
          toXml(bundle, { fhirVersion: version, pretty: form === 'pretty' }),
        );
        const back = orThrow('read', fromXml(text, { fhirVersion: version }));
        // By the digits of decimals too, which stand under a symbol.
        expect(isDeepStrictEqual(back, bundle)).toBe(true);
      }
    }
  });
});

// Rules of https://hl7.org/fhir/R4/xml.html, one case each.
describe('the form of FHIR XML', () => {
  it('has values in attributes, and elements in the order of the definitions', () => {
    const code = { text: 'Mole', coding: [{ code: 'a', system: 'http://example.org' }] };
    expect(body({ code, status: 'final' })).toBe(
      '<status value="final"/><code><coding><system value="http://example.org"/>' +
        '<code value="a"/></coding><text value="Mole"/></code>',
    );
  });

  it('has the id of a resource as an element, of any other type as an attribute', () => {
    expect(body({ id: 'a', note: [{ id: 'n', text: 'x' }] })).toBe(
      '<id value="a"/><note id="n"><text value="x"/></note>',
    );
  });

  it('has the url of an extension as an attribute', () => {
    const extension = [{ url: 'http://example.org/e', valueBoolean: true }];
    expect(body({ extension })).toBe(
      '<extension url="http://example.org/e"><valueBoolean value="true"/></extension>',
    );
  });

  it('has the extensions of a primitive inside it', () => {
    const reason = { url: 'http://example.org/why', valueCode: 'unknown' };
    const resource = { _status: { id: 's', extension: [reason] }, valueString: 'a' };
    const text =
      '<status id="s"><extension url="http://example.org/why"><valueCode value="unknown"/>' +
      '</extension></status><valueString value="a"/>';
    expect(body(resource)).toBe(text);
    expect(readBody(text)).toEqual({ resourceType: 'Observation', ...resource });
  });

  it('pads the lists of a primitive with null in JSON', () => {
    const name = [{ given: ['Ada', null, 'Lena'], _given: [null, { id: 'g' }, null] }];
    const text = write({ resourceType: 'Patient', name });
    expect(text).toContain('<name><given value="Ada"/><given id="g"/><given value="Lena"/></name>');
    expect(read(text).value).toEqual({ resourceType: 'Patient', name });
  });

  it('has a contained resource inside an element', () => {
    const contained = [{ resourceType: 'Patient', id: 'p' }];
    const text = '<contained><Patient><id value="p"/></Patient></contained>';
    expect(body({ contained })).toBe(text);
    expect(readBody(text)).toEqual({ resourceType: 'Observation', contained });
  });

  it('has a narrative as XHTML, as it was written', () => {
    const div =
      '<div xmlns="http://www.w3.org/1999/xhtml">\n <p title=\'a\'>1 &lt; 2 &#8211; <b>x</b><!-- c --><br/></p></div>';
    const text = { status: 'generated', div };
    expect(body({ text })).toBe(`<text><status value="generated"/>${div}</text>`);
    expect(readBody(body({ text }))).toEqual({ resourceType: 'Observation', text });
  });

  it('keeps line breaks, tabs and marks in a value', () => {
    const note = [{ text: 'a\tb\r\nc <d> & "e" \'f\'  ' }];
    expect(body({ note })).not.toMatch(/[\t\r\n]/);
    expect(readBody(body({ note }))).toEqual({ resourceType: 'Observation', note });
  });

  it('keeps the digits of several decimals of one object', () => {
    const json =
      '{"resourceType":"Observation","valueSampledData":' +
      '{"origin":{"value":1.0},"period":2.00,"factor":3.0,"dimensions":1}}';
    expect(toJson(read(write(fromJson(json).value)).value)).toBe(json);
  });

  it.each(['4.0', '0.010', '1.0E+2', '1234567890123456789.10', '-0.0', '5'])(
    'keeps the digits of %s',
    (digits) => {
      const json = `{"resourceType":"Observation","valueQuantity":{"value":${digits}}}`;
      const text = write(fromJson(json).value);
      expect(text).toContain(`<value value="${digits}"/>`);
      expect(toJson(read(text).value)).toBe(json);
    },
  );

  it('parses in a parser of others', () => {
    const [exam] = sampleExams(3, 1, { size: 'edge' });
    const bundle = toBundleOrThrow(exam ?? expect.fail(), { bundleType: 'document' });
    const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '' });
    const parsed = parser.parse(write(bundle));
    expect(parsed.Bundle.xmlns).toBe('http://hl7.org/fhir');
    expect(parsed.Bundle.entry.length).toBe(bundle.entry?.length);
  });
});

describe('what is read', () => {
  it.each([
    ['a prefix', '<f:Patient xmlns:f="http://hl7.org/fhir"><f:active value="true"/></f:Patient>'],
    ['single quotes', `<Patient ${FHIR.replaceAll('"', "'")}><active value='true'/></Patient>`],
    [
      'white space',
      `\uFEFF\n<Patient\n${FHIR} >\r\n<active\tvalue = "true" ></active >\n</Patient >`,
    ],
    [
      'comments and instructions',
      `<?xml version="1.0"?><!-- a --><?p q?><Patient ${FHIR}><!-- b --><active value="true"/></Patient><!-- c -->`,
    ],
    [
      'a schema location',
      `<Patient ${FHIR} xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="a b"><active value="&#116;rue"/></Patient>`,
    ],
  ])('may have %s', (_, text) => {
    expect(read(text)).toEqual({
      ok: true,
      value: { resourceType: 'Patient', active: true },
      issues: [],
    });
  });

  it('follows the version', () => {
    const text = `<Observation ${FHIR}><bodyStructure><display value="x"/></bodyStructure></Observation>`;
    expect(read(text, 'R5').issues).toEqual([]);
    expect(read(text, 'R4').issues.map(({ code }) => code)).toEqual(['unknown-property']);
  });
});

const patient = (content: string): string => `<Patient ${FHIR}>${content}</Patient>`;
const xxe = '<!DOCTYPE Patient [<!ENTITY x SYSTEM "file:///etc/passwd">]>';
const laughs = `<!DOCTYPE a [<!ENTITY a "${'b'.repeat(99)}"><!ENTITY c "&a;&a;&a;&a;&a;">]>`;
const div = (content: string, ns = 'http://www.w3.org/1999/xhtml'): string =>
  patient(`<text><status value="generated"/><div xmlns="${ns}">${content}</div></text>`);

describe('texts that are refused', () => {
  it.each([
    ['nothing', '', 'not-well-formed'],
    ['JSON', '{"resourceType":"Patient"}', 'not-well-formed'],
    [
      'a document type with an external entity',
      xxe + patient('<id value="&x;"/>'),
      'forbidden-doctype',
    ],
    [
      'a document type with nested entities',
      laughs + patient('<id value="&c;"/>'),
      'forbidden-doctype',
    ],
    ['an entity that HTML has', patient('<id value="&nbsp;"/>'), 'not-well-formed'],
    ['such an entity in a narrative', div('&nbsp;'), 'not-well-formed'],
    ['a bare ampersand', patient('<id value="a & b"/>'), 'not-well-formed'],
    [
      'a reference to a character that XML has not',
      patient('<id value="&#0;"/>'),
      'not-well-formed',
    ],
    ['a control character', patient('<id value="a\u0001"/>'), 'invalid-unicode'],
    ['half a surrogate pair', patient('<id value="\uD800"/>'), 'invalid-unicode'],
    ['a tag that is not closed', `<Patient ${FHIR}><active value="true">`, 'not-well-formed'],
    ['a wrong closing tag', patient('<active value="true"></id>'), 'not-well-formed'],
    ['an attribute twice', patient('<id value="a" value="b"/>'), 'not-well-formed'],
    ['an attribute without quotes', patient('<id value=a/>'), 'not-well-formed'],
    ['a < in an attribute', patient('<id value="<"/>'), 'not-well-formed'],
    ['two roots', patient('') + patient(''), 'not-well-formed'],
    ['text after the root', `${patient('<id value="a"/>')}x`, 'not-well-formed'],
    ['-- in a comment', patient('<!-- a -- b --><id value="a"/>'), 'not-well-formed'],
    [']]> in text', div('a ]]> b'), 'not-well-formed'],
    ['a late XML declaration', ` <?xml version="1.0"?>${patient('')}`, 'not-well-formed'],
    ['a prefix that is not declared', patient('<f:id value="a"/>'), 'not-well-formed'],
    ['no namespace', '<Patient><id value="a"/></Patient>', 'unchecked-resource'],
    ['another namespace', '<Patient xmlns="urn:x"/>', 'unchecked-resource'],
    ['a data type as root', `<Period ${FHIR}/>`, 'unchecked-resource'],
    ['a resource that is not held', `<Medication ${FHIR}/>`, 'unchecked-resource'],
    ['__proto__ as root', `<__proto__ ${FHIR}/>`, 'unchecked-resource'],
    ['an unknown element', patient('<nick value="a"/>'), 'unknown-property'],
    ['constructor as element', patient('<constructor value="a"/>'), 'unknown-property'],
    [
      'an element of XHTML outside a narrative',
      patient('<id xmlns="http://www.w3.org/1999/xhtml" value="a"/>'),
      'unknown-property',
    ],
    ['an unknown attribute', patient('<active value="true" units="a"/>'), 'unknown-property'],
    ['a value on a complex element', patient('<name value="a"/>'), 'unknown-property'],
    ['a narrative in the namespace of FHIR', div('a', 'http://hl7.org/fhir'), 'invalid-narrative'],
    ['text between elements', patient('<id value="a"/>text'), 'invalid-value'],
    ['CDATA between elements', patient('<id value="a"/><![CDATA[x]]>'), 'invalid-value'],
    ['a wrong order', patient('<gender value="male"/><active value="true"/>'), 'wrong-order'],
    [
      'a list in two places',
      patient('<name id="a"/><active value="true"/><name id="b"/>'),
      'wrong-order',
    ],
    ['an element twice', patient('<active value="true"/><active value="true"/>'), 'too-many'],
    ['an empty value', patient('<id value=""/>'), 'empty-value'],
    ['an element without content', patient('<name/>'), 'empty-value'],
    ['a boolean in words', patient('<active value="yes"/>'), 'invalid-value'],
    ['a number in words', `<Bundle ${FHIR}><total value="ten"/></Bundle>`, 'invalid-value'],
    [
      'a number too large',
      `<Bundle ${FHIR}><entry><search><score value="1e999"/></search></entry></Bundle>`,
      'invalid-value',
    ],
    [
      'two resources in one place',
      `<Bundle ${FHIR}><entry><resource><Patient/><Patient/></resource></entry></Bundle>`,
      'invalid-value',
    ],
  ])('%s', (_, text, code) => {
    expect(faults(text)).toContain(code);
    expect(read(text).value).toBeUndefined();
  });

  it('tells the line, and nothing of the text', () => {
    const text = patient('\n<id value="a"/>\n <nickname value="Zacharias"/>');
    const [found] = read(text).issues;
    expect(found?.source).toEqual({ line: 3, column: 2 });
    expect(JSON.stringify(found)).not.toMatch(/Zacharias|nickname/);
  });

  it('at a limit of depth, of elements and of size', () => {
    const deep = patient('<extension url="a">'.repeat(100_000));
    expect(faults(deep)).toEqual(['too-deep']);
    const wide = patient('<name id="a"/>'.repeat(1000));
    expect(fromXml(wide, { budget: { values: 1000 } }).issues.map(({ code }) => code)).toEqual([
      'too-large',
    ]);
    expect(fromXml(wide, { budget: { characters: 1000 } }).issues.map(({ code }) => code)).toEqual([
      'too-large',
    ]);
    expect(fromXml(wide, { budget: { values: 1001 } }).issues).toEqual([]);
  });
});

describe('resources that cannot be written', () => {
  const cyclic: Record<string, unknown> = { resourceType: 'Patient' };
  Object.assign(cyclic, { contained: [cyclic] });
  it.each<[string, unknown, string]>([
    ['nothing', undefined, 'unchecked-resource'],
    ['a list', [], 'unchecked-resource'],
    ['no type', {}, 'unchecked-resource'],
    ['a type that is no resource', { resourceType: 'Period', start: '2024' }, 'unchecked-resource'],
    ['an inherited name as type', { resourceType: 'toString' }, 'unchecked-resource'],
    ['a circle', cyclic, 'too-deep'],
    ['an unknown property', { resourceType: 'Patient', nick: 'a' }, 'unknown-property'],
    [
      'a companion of an object',
      { resourceType: 'Patient', _name: [{ id: 'a' }] },
      'unknown-property',
    ],
    ['a text for a boolean', { resourceType: 'Patient', active: 'true' }, 'wrong-type'],
    ['a number for a text', { resourceType: 'Patient', id: 5 }, 'wrong-type'],
    ['no number', { resourceType: 'Bundle', total: Number.NaN }, 'wrong-type'],
    ['an object for a list', { resourceType: 'Patient', name: {} }, 'wrong-type'],
    ['a text for an object', { resourceType: 'Observation', code: 'a' }, 'wrong-type'],
    ['a list for a value', { resourceType: 'Patient', active: [true] }, 'wrong-type'],
    ['an empty list', { resourceType: 'Patient', name: [] }, 'empty-value'],
    ['an empty object', { resourceType: 'Patient', name: [{}] }, 'empty-value'],
    ['an empty text', { resourceType: 'Patient', id: '' }, 'empty-value'],
    ['null', { resourceType: 'Patient', name: [{ given: [null] }] }, 'empty-value'],
    ['a control character', { resourceType: 'Patient', id: '\u0001' }, 'invalid-unicode'],
    [
      'a narrative that is not closed',
      { resourceType: 'Patient', text: { div: '<div>' } },
      'invalid-narrative',
    ],
    [
      'a narrative with more behind it',
      {
        resourceType: 'Patient',
        text: { div: '<div xmlns="http://www.w3.org/1999/xhtml">a</div><x/>' },
      },
      'invalid-narrative',
    ],
    [
      'a narrative without its namespace',
      { resourceType: 'Patient', text: { div: '<div>a</div>' } },
      'invalid-narrative',
    ],
  ])('%s', (_, resource, code) => {
    const { value, issues } = toXml(resource);
    expect(value).toBeUndefined();
    expect(issues.map((found) => found.code)).toContain(code);
  });
});
