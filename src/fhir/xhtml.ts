import { XHTML } from './names/systems.ts';

const special = /[&<>"]/;

/** Text for XHTML content or a double-quoted attribute. */
export function escapeXhtml(text: string): string {
  if (!special.test(text)) return text;
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** The div of a narrative around content that is XHTML already. */
export function narrativeDiv(content: string): string {
  return `<div xmlns="${XHTML}">${content}</div>`;
}
