import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { type Exam, type Path, parseExam } from '../../../src/index.ts';
import { type LetterReader, letterHtml, toLetter } from '../../../src/letters/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { structure } from '../reading/structure.ts';

const folder = join(import.meta.dirname, '../../../examples/exams');
const exams: readonly Exam[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')));

/** Pieces that pages have been broken with. Source: OWASP cross-site scripting cheat sheets, from memory. */
const pieces = [
  '<script>alert(1)</script>',
  '</style>',
  '</title>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '<!--',
  '-->',
  ']]>',
  '&lt;',
  '&#60;',
  '&',
  '<',
  '>',
  '"',
  "'",
  '`',
  '=',
  '<svg/onload=alert(1)>',
  'javascript:alert(1)',
  '</bdi></li></ul></main><h1>',
  '\u202e',
  '\u202c',
  '\u2066',
  '\u2069',
  '\u200f',
  '\u2028',
  '\n',
  '{{constructor.constructor("x")()}}',
  '<a href="https://example.invalid">',
  '@import url(//example.invalid)',
  '<base href=//example.invalid>',
  '<meta http-equiv=refresh content=0>',
];

const drawn = fc.sample(
  fc
    .array(fc.oneof(fc.constantFrom(...pieces), fc.string({ unit: 'grapheme', minLength: 1 })), {
      minLength: 2,
      maxLength: 6,
    })
    .map((parts) => `a${parts.join('')}z`),
  { numRuns: 1200, seed: 20_250_901 },
);

/** A thousand hostile texts by a fixed seed. */
export const texts: readonly string[] = [...new Set(drawn)].slice(0, 1000);

type Json = unknown;

function stringsOf(value: Json, path: Path = []): Path[] {
  if (typeof value === 'string') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    stringsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

function withText(value: Json, path: Path, text: string): Json {
  const [step, ...rest] = path;
  if (step === undefined) return text;
  if (Array.isArray(value)) {
    return value.map((inner, at) => (at === step ? withText(inner, rest, text) : inner));
  }
  // `path` was found in `value`, so that there is an object under every step of words.
  const object = value as Record<string, Json>;
  return { ...object, [step]: withText(object[step], rest, text) };
}

interface TextPlace {
  readonly path: Path;
  /** Set where the text must be free of white space, as a code of FHIR at most may have single spaces. */
  readonly close: boolean;
}

/** Where an exam takes any text: no key, time, number or address. */
function textPlaces(exam: Exam): TextPlace[] {
  const takes = (path: Path, text: string): boolean =>
    parseExam(withText(exam, path, text)).value !== undefined;
  // Every reading is of the whole exam: what was found of a place holds for the others of its name.
  const found = new Map<string, Omit<TextPlace, 'path'> | undefined>();
  return stringsOf(exam).flatMap((path): TextPlace[] => {
    const name = placeName(exam, path);
    if (!found.has(name)) {
      const open = takes(path, 'any\n <text> & "more"');
      found.set(name, open || takes(path, '<any>&"') ? { close: !open } : undefined);
    }
    const place = found.get(name);
    return place === undefined ? [] : [{ path, ...place }];
  });
}

/** The properties that lead to a place, with the kind of its statement. */
function placeName({ statements }: Exam, path: Path): string {
  const [list, at] = path;
  const kind = list === 'statements' ? statements[Number(at)]?.kind : '';
  return [kind, ...path.filter((step) => typeof step === 'string')].join('.');
}

function everywhere(exam: Exam, paths: readonly TextPlace[], text: string): Exam {
  const closed = text.replaceAll(/\s/g, '');
  const filled = paths.reduce<Json>(
    (made, { path, close }) => withText(made, path, close ? closed : text),
    exam,
  );
  const { value, issues } = parseExam(filled);
  if (value === undefined) throw new Error(JSON.stringify(issues.slice(0, 3)));
  return value;
}

export const places: readonly { readonly exam: Exam; readonly paths: readonly TextPlace[] }[] =
  exams.map((exam) => ({ exam, paths: textPlaces(exam) }));

/** Those of the texts that change the structure of a page that is full of them. */
export function textsThatBreak(some: readonly string[]): readonly string[] {
  const usual = places.map(({ exam, paths }) =>
    JSON.stringify(structure(toHtml(everywhere(exam, paths, 'aqz')))),
  );
  return some.filter((text, at) => {
    const { exam, paths } = places[at % places.length] ?? fail();
    const page = structure(toHtml(everywhere(exam, paths, text)));
    return JSON.stringify(page) !== usual[at % places.length];
  });
}

const readers: readonly LetterReader[] = [
  'specialist',
  'general-practitioner',
  'patient',
  'employer',
];

function lettersOf(exam: Exam): string {
  const pages = readers.map((to) => {
    const { value, issues } = toLetter(exam, to, {
      share: exam.consents?.some(({ to: whom, answer }) => whom === 'share' && answer === 'given')
        ? (exam.conclusion?.plan ?? []).map(({ key }) => key)
        : [],
    });
    if (value === undefined) throw new Error(JSON.stringify(issues.slice(0, 3)));
    return structure(letterHtml(value));
  });
  return JSON.stringify(pages);
}

/** Those of the texts that change the structure of a letter that is full of them. */
export function textsThatBreakLetters(some: readonly string[]): readonly string[] {
  const usual = places.map(({ exam, paths }) => lettersOf(everywhere(exam, paths, 'aqz')));
  return some.filter((text, at) => {
    const { exam, paths } = places[at % places.length] ?? fail();
    return lettersOf(everywhere(exam, paths, text)) !== usual[at % places.length];
  });
}

function fail(): never {
  throw new Error('no exam');
}
