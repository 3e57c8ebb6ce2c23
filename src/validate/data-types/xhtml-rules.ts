/**
 * Elements and attributes that a narrative may have: those of HTML 4.0, chapters 7 to 11 (but for 9.4)
 * and 15, without what is deprecated there, and `a` and `img`.
 * @see https://hl7.org/fhir/R4/narrative.html#xhtml and https://www.w3.org/TR/REC-html40/
 */
const everywhere =
  'title style class id lang xml:lang xml:space dir accesskey tabindex xmlns span width align valign char charoff abbr axis headers scope rowspan colspan';

const byElement: Readonly<Record<string, string>> = {
  a: 'href name hreflang charset type rel rev coords shape',
  img: 'src alt longdesc height border',
  table: 'summary border frame rules cellspacing cellpadding',
  td: 'nowrap',
  th: 'nowrap',
  q: 'cite',
  blockquote: 'cite',
  map: 'name',
  area: 'shape coords href alt nohref',
  ...Object.fromEntries(
    'div p br hr h1 h2 h3 h4 h5 h6 ul ol li dl dt dd caption colgroup col thead tfoot tbody tr span b i em strong dfn code samp kbd var cite abbr acronym sub sup pre tt big small address bdo'
      .split(' ')
      .map((name) => [name, '']),
  ),
};

const words = (names: string): ReadonlySet<string> => new Set(names.split(' '));

/** Elements that hold nothing. */
const empty = words('br hr img col area');

/** Elements that stand only in these. */
const parents: ReadonlyMap<string, string> = new Map(
  Object.entries({
    li: 'ul ol',
    dt: 'dl',
    dd: 'dl',
    caption: 'table',
    colgroup: 'table',
    col: 'table colgroup',
    thead: 'table',
    tfoot: 'table',
    tbody: 'table',
    tr: 'table thead tfoot tbody',
    td: 'tr',
    th: 'tr',
    area: 'map',
  }),
);

/** Elements that hold only these, and no text. */
const children: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ul: 'li',
    ol: 'li',
    dl: 'dt dd',
    table: 'caption colgroup col thead tfoot tbody tr',
    colgroup: 'col',
    thead: 'tr',
    tfoot: 'tr',
    tbody: 'tr',
    tr: 'td th',
  }),
);

const block = 'div table ul ol dl pre blockquote';
const line = words(
  'span a b i em strong dfn code samp kbd var cite abbr acronym q sub sup tt big small bdo',
);

export interface ElementRule {
  readonly name: string;
  readonly attributes: ReadonlySet<string>;
  readonly parents: ReadonlySet<string> | undefined;
  readonly children: ReadonlySet<string> | undefined;
  /** Elements that would break the line of text that it is. */
  readonly breaks: ReadonlySet<string> | undefined;
  readonly empty: boolean;
}

/** By name; none for an element that a narrative cannot have. */
export const elementRules: ReadonlyMap<string, ElementRule> = new Map(
  Object.entries(byElement).map(([name, own]) => [
    name,
    {
      name,
      attributes: words(`${everywhere} ${own}`),
      parents: optional(parents.get(name)),
      children: optional(children.get(name)),
      breaks: optional(name === 'p' ? `${block} p hr` : line.has(name) ? block : undefined),
      empty: empty.has(name),
    },
  ]),
);

function optional(names: string | undefined): ReadonlySet<string> | undefined {
  return names === undefined ? undefined : words(names);
}
