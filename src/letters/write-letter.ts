import { element, type Html, pageHead } from '../report/html.ts';
import { pageNumberStyle } from '../report/style.ts';
import type { Letter, SentenceSource } from './letter.ts';
import type { LetterWords } from './letter-words.ts';
import { englishLetterWords } from './words/english.ts';

/**
 * Writes a letter as plain text, a sentence a line, to be changed in any editor.
 *
 * @param letter From `toLetter`.
 * @param words In the language of the letter. Default: English.
 * @returns The text, which begins with the reminder that nobody has read it over yet.
 * @example
 * const draftText = letterText(orThrow('write the letter', toLetter(exam, 'specialist')));
 */
export function letterText(letter: Letter, words: LetterWords = englishLetterWords): string {
  const sections = letter.sections.map(({ heading, sentences }) =>
    [...(heading === undefined ? [] : [heading]), ...sentences.map(({ text }) => text)].join('\n'),
  );
  return `${[`[${words.notChecked}]`, letter.running, letter.title, ...sections].join('\n\n')}\n`;
}

/**
 * Writes a letter as a page that can be changed in the browser and printed, complete in itself and
 * without script. Each sentence names in `data-of` what it rests on.
 *
 * @param letter From `toLetter`.
 * @param words In the language of the letter. Default: English.
 * @returns The page as HTML.
 * @example
 * const page = letterHtml(orThrow('write the letter', toLetter(exam, 'patient')));
 */
export function letterHtml(letter: Letter, words: LetterWords = englishLetterWords): string {
  const body = letter.sections.map(({ heading, sentences }) =>
    element(
      'section',
      {},
      heading !== undefined && element('h2', {}, heading),
      sentences.map(({ text, of }) =>
        element(
          'p',
          { 'data-of': of.length > 0 ? of.map(sourceText).join(' ') : undefined },
          element('bdi', {}, text),
        ),
      ),
    ),
  );
  const page: Html = element(
    'html',
    { lang: letter.language },
    pageHead(letter.title, `${style}${pageNumberStyle(words.pageNumber)}`),
    element(
      'body',
      {},
      element('header', { class: 'running' }, element('bdi', {}, letter.running)),
      element('aside', { class: 'unread', 'aria-label': letter.title }, words.notChecked),
      element(
        'main',
        { contenteditable: 'true', role: 'main', 'aria-label': letter.title },
        element('h1', {}, letter.title),
        body,
      ),
    ),
  );
  return `<!DOCTYPE html>\n${page.markup}\n`;
}

/** `statement:KEY` or `exam:conclusion/plan/0`. */
function sourceText(source: SentenceSource): string {
  return 'statement' in source ? `statement:${source.statement}` : `exam:${source.path.join('/')}`;
}

/** A constant: no character that HTML would read. */
const style = `
:root { color-scheme: light dark; }
body { margin: 0 auto; padding: 1rem; max-width: 44rem; font: 1rem/1.5 system-ui, sans-serif;
  overflow-wrap: anywhere; }
h1 { font-size: 1.3rem; } h2 { font-size: 1.05rem; margin-block: 1rem .2rem; } p { margin-block: .2rem;
  white-space: pre-wrap; }
.unread { border: 3px dashed; padding: .3rem .8rem; }
.running { font-weight: 600; border-block-end: 2px solid; padding-block-end: .2rem; margin-block-end: .6rem; }
@page { size: A4; margin: 15mm 20mm; } @media print { body { display: table; width: 100%; max-width: none;
  padding: 0; font-size: 10.5pt; } .running { display: table-header-group; break-inside: avoid; font-size: 9pt; }
  .running::after { content: ""; display: block; border-block-end: 1px solid; margin-block: 1mm 3mm; }
  h2 { break-after: avoid; } p { break-inside: avoid; } }
`;
