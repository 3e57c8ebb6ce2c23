import { base64Bytes, base64Length, sha1Base64 } from '../../data/base64.ts';
import { carriedText } from '../../fhir/json/decimal.ts';
import { isAbsolute } from '../bundles/resolve.ts';
import type { Property } from '../elements/definitions.ts';
import { type JsonObject, textOf } from '../walk/json.ts';
import { report, type Scope } from '../walk/scope.ts';
import type { PrimitiveCheck, Stage } from '../walk/stage.ts';
import { exists, parseDateTime } from './date-time.ts';
import { checkNarrative } from './narrative.ts';

/**
 * The stage of data types: what a pattern cannot tell of a value, or of several that belong together.
 * @see https://hl7.org/fhir/R4/datatypes.html
 */
export const dataTypeStage: Stage = {
  primitives: {
    date: ifText(checkDate),
    dateTime: ifText(checkDate),
    instant: ifText(checkDate),
    code: ifText(checkCode),
    string: ifText(checkString),
    markdown: ifText(checkText),
    uri: ifText(checkUri),
    url: ifText(checkUri),
    oid: ifText(checkUri),
    uuid: ifText(checkUri),
    canonical: ifText(checkCanonical),
    base64Binary: ifText(checkBase64),
    xhtml: ifText(checkNarrative),
    decimal: checkDecimal,
  },
  objects: {
    Attachment: checkAttachment,
    Identifier: checkIdentifier,
  },
};

const page = 'https://hl7.org/fhir/R4/datatypes.html';

type TextCheck = (value: string, scope: Scope, property: Property, holder: JsonObject) => void;

/** A value of another kind was told by the schema stage. */
function ifText(check: TextCheck): PrimitiveCheck {
  return (value, scope, property, holder) => {
    if (typeof value === 'string') check(value, scope, property, holder);
  };
}

function checkDate(value: string, scope: Scope): void {
  // A year or month of the right form exists.
  if (value.length < 10) return;
  let possible = scope.dates.get(value);
  if (possible === undefined) {
    const parsed = parseDateTime(value);
    possible = parsed === undefined || exists(parsed);
    scope.dates.set(value, possible);
  }
  if (possible) return;
  report(
    scope,
    'impossible-date',
    { reason: 'calendar' },
    {
      rule: `${page}#dateTime`,
      value,
    },
  );
}

/** @see https://hl7.org/fhir/R4/datatypes.html#string: no more than 1 MB. */
const longestText = 1024 * 1024;

function checkString(value: string, scope: Scope): void {
  checkText(value, scope);
  const outer = value.charCodeAt(0) <= 0x20 || value.charCodeAt(value.length - 1) <= 0x20;
  if (outer && value.trim() !== '') {
    report(
      scope,
      'invalid-value',
      { reason: 'spaces-at-ends' },
      {
        severity: 'warning',
        rule: `${page}#string`,
      },
    );
  }
}

function checkText(value: string, scope: Scope): void {
  if (value.length > longestText) {
    report(
      scope,
      'too-large',
      { reason: 'text', maximum: longestText },
      {
        rule: `${page}#string`,
      },
    );
  } else if (value.charCodeAt(0) <= 0x20 && value !== '' && value.trim() === '') {
    report(
      scope,
      'empty-value',
      { reason: 'blank' },
      {
        severity: 'warning',
        rule: `${page}#string`,
      },
    );
  }
}

/** @see https://hl7.org/fhir/R4/datatypes.html#code: no whitespace but single spaces in the contents */
function checkCode(value: string, scope: Scope): void {
  // The published pattern takes a tab or a line break in place of a space.
  if (!/[\t\n\r]/.test(value)) return;
  report(scope, 'invalid-value', { reason: 'code-space' }, { rule: `${page}#code`, value });
}

const uuidForm = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const oidForm = /^urn:oid:[0-2](\.(0|[1-9]\d*))+$/;

function checkUri(value: string, scope: Scope): void {
  if (!value.startsWith('urn:')) return;
  const wrongUuid = value.startsWith('urn:uuid:') && !uuidForm.test(value);
  if (!wrongUuid && !(value.startsWith('urn:oid:') && !oidForm.test(value))) return;
  report(
    scope,
    'invalid-value',
    { reason: wrongUuid ? 'uuid' : 'oid' },
    {
      rule: `${page}#uri`,
      value,
    },
  );
}

function checkCanonical(value: string, scope: Scope): void {
  checkUri(value, scope);
  if (value.startsWith('#') || isAbsolute(value)) return;
  report(
    scope,
    'invalid-value',
    { reason: 'canonical' },
    {
      rule: `${page}#canonical`,
      value,
    },
  );
}

function checkBase64(value: string, scope: Scope, property: Property): void {
  if (base64Length(value) === undefined) {
    report(
      scope,
      'invalid-value',
      { reason: 'base64' },
      {
        rule: 'https://www.rfc-editor.org/rfc/rfc4648#section-4',
      },
    );
  } else if (/[ \t\r\n]/.test(value)) {
    // FHIR's pattern lets spaces pass; a decoder of attachments does not.
    const severity = property.path === 'Attachment.data' ? 'error' : 'warning';
    report(
      scope,
      'invalid-value',
      { reason: 'base64-spaces' },
      {
        severity,
        rule: 'https://www.rfc-editor.org/rfc/rfc4648#section-3.1',
      },
    );
  }
}

function checkDecimal(
  value: string | number | boolean,
  scope: Scope,
  _property: Property,
  holder: JsonObject,
): void {
  if (typeof value !== 'number') return;
  const name = scope.path.at(-1);
  const written = typeof name === 'string' ? carriedText(holder, name, value) : undefined;
  const text = written ?? String(value);
  const [, whole = '', fraction = ''] = /^-?(\d+)(?:\.(\d+))?/.exec(text) ?? [];
  if (whole.length <= 18 && fraction.length <= 17) return;
  // R5 made it a rule of form; before, a system only need not keep more digits.
  const severity = scope.definitions.fhirVersion === 'R5' ? 'error' : 'warning';
  report(
    scope,
    'invalid-value',
    { reason: 'decimal-digits' },
    {
      severity,
      rule: `https://hl7.org/fhir/R5/datatypes.html#decimal`,
      value,
    },
  );
}

function checkAttachment(value: JsonObject, scope: Scope): void {
  const data = textOf(value['data']);
  const length = data === undefined ? undefined : base64Length(data);
  if (data === undefined || length === undefined) return;
  const size = value['size'];
  if (size !== undefined && Number(size) !== length) {
    report(
      scope,
      'contradiction',
      { reason: 'attachment-size', count: length },
      {
        rule: 'https://hl7.org/fhir/R4/datatypes-definitions.html#Attachment.size',
      },
      ['size'],
    );
  }
  const hash = textOf(value['hash']);
  if (hash !== undefined && sha1Base64(base64Bytes(data)) !== hash) {
    report(
      scope,
      'contradiction',
      { reason: 'attachment-hash' },
      {
        rule: 'https://hl7.org/fhir/R4/datatypes-definitions.html#Attachment.hash',
      },
      ['hash'],
    );
  }
}

function checkIdentifier({ system, value }: JsonObject, scope: Scope): void {
  if (typeof system !== 'string') return;
  const rule = 'https://hl7.org/fhir/R4/datatypes.html#Identifier';
  if (!isAbsolute(system)) {
    report(
      scope,
      'invalid-value',
      { reason: 'system' },
      {
        rule,
        value: system,
      },
      ['system'],
    );
  } else if (system === 'urn:ietf:rfc:3986' && typeof value === 'string' && !isAbsolute(value)) {
    report(
      scope,
      'invalid-value',
      { reason: 'uri-identifier' },
      {
        rule,
        value,
      },
      ['value'],
    );
  }
}
