import { sha256 } from '@noble/hashes/sha2.js';
import { type Content, element, type Html, joined } from '../html.ts';

/** A page about a conversion. */
export interface PageParts {
  readonly title: string;
  /** BCP 47 tag. Default `en`. */
  readonly language?: string;
  readonly style: string;
  readonly body: Content;
  /** Script of ours, without anything of the export. */
  readonly script?: string;
  /** What the script reads. */
  readonly data?: unknown;
}

/**
 * A page that is complete in itself. It loads nothing, sends nothing, and runs no script but ours, which
 * it names by its hash, so that no text of an export can become one.
 * @see https://www.w3.org/TR/CSP3/#grammardef-hash-source
 */
export function securePage({
  title,
  language = 'en',
  style,
  body,
  script,
  data,
}: PageParts): string {
  const policy = [
    "default-src 'none'",
    `style-src ${hashOf(style)}`,
    ...(script === undefined ? [] : [`script-src ${hashOf(script)}`]),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  const head = element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, title),
    { markup: `<style>${style}</style>` },
  );
  const page = element(
    'html',
    { lang: language },
    head,
    element('body', {}, body, scripts(script, data)),
  );
  return `<!DOCTYPE html>\n${page.markup}\n`;
}

function scripts(script: string | undefined, data: unknown): Html | undefined {
  if (script === undefined) return undefined;
  // A data block is no script; without "<" nothing in it can end it.
  const text = JSON.stringify(data ?? null).replaceAll('<', '\\u003c');
  return joined(
    { markup: `<script id="data" type="application/json">${text}</script>` },
    { markup: `<script>${script}</script>` },
  );
}

function hashOf(text: string): string {
  let bytes = '';
  for (const byte of sha256(new TextEncoder().encode(text))) bytes += String.fromCharCode(byte);
  return `'sha256-${btoa(bytes)}'`;
}
