import { describe, expect, it } from 'vitest';
import type { Exam } from '../../src/index.ts';
import {
  englishLetterWords,
  germanLetterWords,
  type Letter,
  type LetterReader,
  type LetterSentence,
  letterHtml,
  letterText,
  readingEase,
  toLetter,
} from '../../src/letters/index.ts';
import { englishWords, germanWords } from '../../src/report/index.ts';
import { builtInCatalogue } from '../../src/terminology/catalogue.ts';
import { german } from '../../src/terminology/languages/de.ts';
import { structure } from '../report/reading/structure.ts';
import { savedExample, savedExamples } from '../report/saved-examples.ts';

const readers: readonly LetterReader[] = [
  'specialist',
  'general-practitioner',
  'patient',
  'employer',
];
const tongues = {
  english: {},
  german: { language: german, words: germanWords, letterWords: germanLetterWords },
} as const;

function letterOf(exam: Exam, to: LetterReader, tongue: keyof typeof tongues = 'english'): Letter {
  const { value, issues } = toLetter(exam, to, tongues[tongue]);
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return value;
}

function sentencesOf({ sections }: Letter): readonly LetterSentence[] {
  return sections.flatMap(({ sentences }) => sentences);
}

function at(value: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (inner, step) =>
      typeof inner === 'object' && inner !== null ? Reflect.get(inner, step) : undefined,
    value,
  );
}

/** Every fixed text of the letters, with its gaps as any text. */
function fixedTexts(value: unknown): RegExp[] {
  if (typeof value === 'string') {
    const parts = value
      .split(/\{\w+\}/)
      .map((part) => part.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'));
    return [new RegExp(`^${parts.join('[\\s\\S]*')}(: _+)?$`)];
  }
  return typeof value === 'object' && value !== null
    ? Object.values(value).flatMap(fixedTexts)
    : [];
}

describe.each(savedExamples)('letters of %s', (_, exam) => {
  const pairs = readers.flatMap((to) =>
    (['english', 'german'] as const).map((tongue) => [to, tongue] as const),
  );

  it.each(pairs)('%s, %s: each sentence rests on the exam, or is fixed', (to, tongue) => {
    const letter = letterOf(exam, to, tongue);
    const keys = new Set(exam.statements.map(({ key }) => key));
    const words = tongue === 'german' ? germanLetterWords : englishLetterWords;
    const fixed = fixedTexts(words);
    for (const { text, of } of sentencesOf(letter)) {
      for (const source of of) {
        if ('statement' in source) expect(keys).toContain(source.statement);
        else expect(at(exam, source.path), source.path.join('/')).toBeDefined();
      }
      if (of.length > 0) continue;
      const isTo = text.startsWith(`${words.to}: `);
      expect(isTo || fixed.some((one) => one.test(text)), text).toBe(true);
    }
  });
});

describe.each(savedExamples)('what %s took over and did not look at again', (_, exam) => {
  const carried = { exam: 'E1', statement: 's1', at: '2020-02-03', confirmed: false };
  const unseen: Exam = { ...exam, statements: exam.statements.map((one) => ({ ...one, carried })) };
  const keys = exam.statements.map(({ key }) => key).sort();

  it.each(['specialist', 'general-practitioner'] as const)('stands apart, all of it: %s', (to) => {
    const rests = letterOf(unseen, to).sections.map(({ heading, sentences }) => ({
      heading,
      keys: sentences.flatMap(({ of }) => of.flatMap((one) => ('statement' in one ? [one] : []))),
    }));
    const holding = rests.filter((one) => one.keys.length > 0);
    expect(holding.map(({ heading }) => heading)).toEqual([englishWords.takenOver]);
    expect(holding[0]?.keys.map(({ statement }) => statement).sort()).toEqual(keys);
    const text = letterText(letterOf(unseen, to));
    expect(text.split('seen 3 February 2020').length).toBe(keys.length + 1);
  });

  it('is nothing seen and not nothing: the patient is told that there is more', () => {
    const sentences = sentencesOf(letterOf(unseen, 'patient'));
    expect(sentences.flatMap(({ of }) => of).filter((one) => 'statement' in one)).toEqual([]);
    const texts = sentences.map(({ text }) => text);
    expect(texts).toContain(englishLetterWords.patient.more);
    expect(texts).not.toContain(englishLetterWords.patient.nothing);
  });
});

describe('a letter to the patient', () => {
  it('names no disease, no suspicion and no sign that is not in the list of what may be named', () => {
    for (const [, exam] of savedExamples) {
      const letter = letterOf(exam, 'patient');
      const text = letterText(letter);
      const named = new Set(
        sentencesOf(letter).flatMap(({ of }) =>
          of.flatMap((one) => ('statement' in one ? [one.statement] : [])),
        ),
      );
      for (const statement of exam.statements) {
        if (statement.kind !== 'finding') continue;
        const row = builtInCatalogue.findings.get(statement.finding);
        const grave = row?.disorder === true || statement.certainty === 'suspected';
        if (grave || /suspicious|mass|lump/i.test(row?.display ?? '')) {
          expect(named.has(statement.key), statement.key).toBe(false);
          expect(text).not.toContain(`${row?.display}:`);
        }
      }
    }
  });

  it('counts what it leaves for a person to tell', () => {
    const { issues } = toLetter(savedExample('skin-lesion'), 'patient');
    expect(issues.map(({ code, severity }) => [code, severity])).toContainEqual([
      'not-exported',
      'information',
    ]);
    expect(letterOf(savedExample('skin-lesion'), 'patient').leftOut).toContain('cheek-lesion');
    expect(letterText(letterOf(savedExample('skin-lesion'), 'patient'))).not.toMatch(
      /cancer|keratosis/i,
    );
  });

  it('reads easily: 70 or more on the scale of Flesch, and of Amstad for German', () => {
    const plain = (words: typeof englishLetterWords): string =>
      Object.values(words.patient)
        .flatMap((one) => (typeof one === 'string' ? [one] : Object.values(one)))
        .map((one) => one.replaceAll(/\{\w+\}/g, '').replace(': .', '.'))
        .join(' ');
    expect(readingEase(plain(englishLetterWords), 'en')).toBeGreaterThan(70);
    expect(readingEase(plain(germanLetterWords), 'de')).toBeGreaterThan(70);
  });
});

describe('letters to the patient of the examples, with all that they hold of the exam', () => {
  it.each(savedExamples)('%s: 60 or more, which Flesch calls standard', (_, exam) => {
    for (const [tongue, language] of [
      ['english', 'en'],
      ['german', 'de'],
    ] as const) {
      const { sections } = letterOf(exam, 'patient', tongue);
      // The last section is the name of the writer and the place to sign.
      const sentences = sections.slice(0, -1).flatMap((section) => section.sentences);
      const text = sentences.map((one) => one.text).join(' ');
      expect(readingEase(text, language)).toBeGreaterThan(60);
    }
  });
});

describe('the figure of readability', () => {
  it('is that of the formula on a sentence whose figure is published (Flesch: 116 for six words of one syllable)', () => {
    expect(readingEase('The cat sat on the mat.', 'en')).toBeCloseTo(116.145, 3);
  });

  it('falls with long words and long sentences', () => {
    const hard =
      'Considerable dermatological investigations notwithstanding, uncertainty predominated.';
    expect(readingEase(hard, 'en')).toBeLessThan(0);
    expect(readingEase('Der Hund ist da.', 'de')).toBeGreaterThan(100);
  });
});

describe('a letter to the employer', () => {
  it('tells no finding, no conclusion and no plan', () => {
    for (const [, exam] of savedExamples) {
      const sources = sentencesOf(letterOf(exam, 'employer')).flatMap(({ of }) => of);
      expect(sources.filter((one) => 'statement' in one)).toEqual([]);
      const roots = new Set(sources.map((one) => ('path' in one ? one.path[0] : '')));
      expect(['subject', 'performed', 'examiners', 'status']).toEqual(
        expect.arrayContaining([...roots]),
      );
    }
  });

  it('tells what is named of the plan only with consent to share', () => {
    const shared = toLetter(savedExample('skin-lesion'), 'employer', { share: ['shade'] });
    expect(shared.value && letterText(shared.value)).toContain('Hat & long sleeves');
    const refused = toLetter(savedExample('yearly-check'), 'employer', { share: ['hat'] });
    expect(refused.ok).toBe(false);
    expect(refused.issues.map(({ code, path }) => [code, path])).toEqual([
      ['missing-property', ['consents']],
    ]);
    const unknown = toLetter(savedExample('skin-lesion'), 'employer', { share: ['nothing'] });
    expect(unknown.issues.map(({ code }) => code)).toEqual(['unresolved-key']);
  });
});

describe('a letter to a specialist', () => {
  const texts = (name: string): readonly string[] =>
    sentencesOf(letterOf(savedExample(name), 'specialist')).map(({ text }) => text);

  it('has the figures, tests and scores of the parts in which something is abnormal', () => {
    expect(texts('drooping-lid')).toContain(
      'Diameter of the pupil, Dim light, Looking into the distance: right: 6.0 mm, left: 4.5 mm',
    );
    expect(texts('skin-lesion').join('\n')).toMatch(/Weighted 7-point checklist .*: 8 \(/);
  });

  it('tells each statement once', () => {
    for (const [file, exam] of savedExamples) {
      const keys = sentencesOf(letterOf(exam, 'specialist')).flatMap(({ of }) =>
        of.flatMap((one) => ('statement' in one ? [one.statement] : [])),
      );
      expect(keys.length, file).toBe(new Set(keys).size);
    }
  });
});

describe('the head of every printed page of a letter', () => {
  it('says the status, whose it is and the day', () => {
    const draft = letterOf({ ...savedExample('neck-lump'), status: 'draft' }, 'specialist');
    expect(draft.running).toBe(
      'DRAFT, not released · Håkon Émile Drømsgard · born 25 January 1967 · P-03318 · Examined 12 November 2025',
    );
    expect(letterHtml(draft)).toContain(`<bdi>${draft.running}</bdi></header>`);
    expect(letterText(draft).split('\n\n')[1]).toBe(draft.running);
  });

  it('tells the employer no date of birth and no number', () => {
    for (const [, exam] of savedExamples) {
      const { running } = letterOf(exam, 'employer');
      for (const { value } of exam.subject.identifiers ?? []) expect(running).not.toContain(value);
      expect(running).not.toContain(' born ');
    }
  });
});

describe('a note of the examiner', () => {
  it('stands in quotation marks behind what it is of', () => {
    const { sections } = letterOf(savedExample('neck-lump'), 'specialist');
    const texts = sections.flatMap(({ sentences }) => sentences.map(({ text }) => text));
    expect(texts).toContain(
      'Weight loss: Yes (Told by: Relative) \u201cHis wife says: two holes in the belt; he says «mais non»\u201d',
    );
  });
});

describe('letters of records and texts', () => {
  it('are not made of a withdrawn record', () => {
    const { ok, issues } = toLetter(
      { ...savedExample('neck-lump'), status: 'entered-in-error' },
      'patient',
    );
    expect([ok, issues.map(({ code }) => code)]).toEqual([false, ['not-exported']]);
  });

  it('say what is missing where the exam is none', () => {
    expect(toLetter({} as Exam, 'patient').ok).toBe(false);
  });

  it('keep their structure whatever the texts say', () => {
    const hostile = '</bdi><script>alert(1)</script>"\' $& {name}';
    const exam = savedExample('neck-lump');
    const written = (text: string): string =>
      letterHtml(
        letterOf(
          {
            ...exam,
            subject: { name: { text } },
            statements: exam.statements.map((one) => ({ ...one, note: text })),
          },
          'specialist',
        ),
      );
    expect(structure(written(hostile))).toEqual(structure(written('plain')));
    expect(written(hostile)).not.toContain('<script');
  });
});
