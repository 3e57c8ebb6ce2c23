import { positionsIn } from '../../data/text-position.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { readResourceXml } from '../../fhir/xml/from-xml.ts';
import { type Issue, issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { pathPointer } from '../../issues/path.ts';
import {
  runStages,
  unreadable,
  type ValidateOptions,
  type Validation,
} from '../validate-bundle.ts';
import type { ValidatedVersion } from '../versions/version.ts';
import { placesInJson } from './json-places.ts';
import { placesInXml } from './xml-places.ts';
import { xmlTypes } from './xml-types.ts';

/**
 * Validates a resource as text: XML where its first character is `<`, else JSON. Each issue has the
 * line and column at which the element begins that it is about, or the nearest one around it.
 */
export function runOnText(
  text: string,
  version: ValidatedVersion,
  options: ValidateOptions = {},
): Validation {
  return /^\uFEFF?\s*</.test(text)
    ? validateXml(text, version, options)
    : validateJson(text, version, options);
}

function validateJson(
  text: string,
  version: ValidatedVersion,
  options: ValidateOptions,
): Validation {
  const { value, issues } = fromJson(text.replace(/^\uFEFF/, ''), {
    ...(options.budget && { budget: options.budget }),
  });
  if (value === undefined) return unreadable(issues, version, options);
  return runStages(value, version, options, {
    issues,
    located: locatedInJson(text),
  });
}

function validateXml(
  text: string,
  version: ValidatedVersion,
  options: ValidateOptions,
): Validation {
  const types = xmlTypes(version.plan.definitions);
  const read = readResourceXml(text, types, options.budget);
  const { value, root } = read;
  const issues = [...beforeTheRoot(text, read.instructions), ...read.issues];
  if (value === undefined || root === undefined) return unreadable(issues, version, options);
  return runStages(value, version, options, {
    issues,
    located: (found) => located(withoutEchoes(found), text, () => placesInXml(root)),
  });
}

/**
 * What `fromXml` passes over, since it is not part of a resource, and a receiver refuses all the same:
 * another character set, and processing instructions, as HL7's validator does.
 * @see https://hl7.org/fhir/R4/formats.html: the character encoding is always UTF-8
 */
function beforeTheRoot(text: string, instructions: readonly number[] = []): Issue[] {
  const position = positionsIn(text);
  const [, encoding = 'UTF-8'] =
    /^\uFEFF?<\?xml\s[^>]*?encoding\s*=\s*["']([^"']*)/.exec(text) ?? [];
  const found = instructions.map((at) =>
    issue('unknown-property', [], { reason: 'xml-instruction' }, { source: position(at) }),
  );
  if (encoding.toUpperCase() === 'UTF-8') return found;
  const source = position(0);
  return [issue('undeclared-encoding', [], { reason: 'xml-declaration' }, { source }), ...found];
}

/** What the reader of XML has told with its place, the checks of the resource need not tell again. */
function withoutEchoes(found: readonly Issue[]): readonly Issue[] {
  const read = found.filter(({ source }) => source !== undefined);
  const told = new Set(read.map(({ path }) => pathPointer(path)));
  return found.filter(
    ({ source, code, path }) =>
      source !== undefined || !echoes.has(code) || !told.has(pathPointer(path)),
  );
}

const echoes: ReadonlySet<string> = new Set([
  'empty-value',
  'invalid-value',
  'wrong-type',
  'invalid-narrative',
]);

/** Issues with the places in a JSON text that they are about. */
export function locatedInJson(text: string): (issues: readonly Issue[]) => readonly Issue[] {
  return (issues) => located(issues, text, (paths) => placesInJson(text, paths));
}

function located(
  issues: readonly Issue[],
  text: string,
  placesOf: (paths: readonly Path[]) => (path: Path) => number,
): readonly Issue[] {
  if (issues.length === 0) return issues;
  const placeOf = placesOf(issues.map(({ path }) => path));
  const position = positionsIn(text);
  const places = new Map(issues.map((found) => [found, placeOf(found.path)]));
  // In the order of the text, positions cost one pass over it.
  const inOrder = [...places].sort(([, one], [, other]) => one - other);
  const sources = new Map(inOrder.map(([found, place]) => [found, position(place)]));
  return issues.map((found) => {
    const source = sources.get(found);
    return found.source !== undefined || source === undefined ? found : { ...found, source };
  });
}
