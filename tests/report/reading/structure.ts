/** Tags and attribute names of a page in order: its structure without its texts. */
export function structure(html: string): string[] {
  const body = html.slice(html.indexOf('<body'));
  return [...body.matchAll(/<(\/?[a-z0-9]+)((?:\s+[a-z-]+="[^"<]*")*)\s*>|</gi)].map(
    ([whole, tag, attributes = '']) =>
      tag === undefined
        ? `not a tag: ${whole}`
        : [tag, ...[...attributes.matchAll(/([a-z-]+)="/gi)].map(([, name]) => name)].join(' '),
  );
}
