import type { CsvSource } from '../../src/convert/mapping/source.ts';
import type { Target } from '../../src/convert/mapping/target.ts';
import { type Draw, itemsOf, mappingOf, type Truth, target, type Writer } from './context.ts';

/** A table: one row an exam with its own columns, or a row for each value. */
export const writeCsv: Writer = (draw) => {
  const long = draw.below(2) === 0;
  const columns = draw.shuffled(['exam', 'pid', 'type', 'code', 'value', 'side', 'unit', 'note']);
  // A cell has one side: a value of two stands in two rows.
  const truths = draw.truths.map((one) => ({ ...one, sides: one.sides.slice(0, 1) }));
  const rowOf = (truth: Truth, person: string, type: string): string => {
    const cells = new Map([
      ['exam', '20240205'],
      ['pid', person],
      ['type', type],
      ['code', draw.field('MRD1')],
      ['value', draw.field(truth.value)],
      ['side', draw.field(truth.sides[0] ?? '')],
      ['unit', draw.field(truth.unit)],
      ['note', draw.field(truth.note)],
    ]);
    return columns.map((column) => cells.get(column) ?? '').join(',');
  };
  const [only] = truths;
  const used = long ? truths : truths.slice(0, 1);
  const person = draw.field(draw.person.mr);
  const type = draw.field('MR');
  const rows = used.map((truth) => rowOf(truth, person, type));
  // Another number of the same person, in a row of its own.
  if (long && only !== undefined && draw.below(2) === 0) {
    rows.push(rowOf({ ...only, note: '' }, draw.field(draw.person.ss), draw.field('SS')));
  }
  const beside = { side: 'side', unit: 'unit', note: 'note' };
  const wide: Target = { ...target, sideFrom: 'side', unitFrom: 'unit', noteFrom: 'note' };
  const mapping = mappingOf(
    { syntax: 'csv', ...(long && { groupBy: ['exam'] }) },
    {
      id: 'exam',
      person: 'pid',
      type: 'type',
      ...(long
        ? { items: itemsOf({ code: ['code'], value: 'value', ...beside }) }
        : { fields: { value: wide } }),
    },
  );
  return { mapping, text: [columns.join(','), ...rows].join('\n'), truths, person: draw.person };
};

/** The same table as a sheet, with rows that nothing stands in between. */
export const writeSheet: Writer = (draw) => {
  const { mapping, text, ...rest } = writeCsv(draw);
  const { groupBy } = mapping.source as CsvSource; // as written above
  let row = 0;
  const lines = text.split('\n').map((line) => {
    row += 1 + draw.below(3);
    return `#at ${JSON.stringify({ sheet: 'Exams', row })}\n${line}\n`;
  });
  const source = { syntax: 'xlsx', ...(groupBy && { groupBy }) } as const;
  return { mapping: { ...mapping, source }, text: lines.join(''), ...rest };
};

/** The same table as lines in which each column has its place, some of them next to each other. */
export const writeFixed: Writer = (draw) => {
  const { mapping, text, ...rest } = writeCsv(draw);
  const { groupBy } = mapping.source as CsvSource; // as written above
  const [names = [], ...rows] = text.split('\n').map((line) => line.split(','));
  let start = 1;
  const columns = names.map((name) => {
    const column = { name, start, length: 8 + draw.below(3) };
    start += column.length + draw.below(2);
    return column;
  });
  const lines = rows.map((cells) =>
    columns.reduce(
      (line, { start: place, length }, at) =>
        line.padEnd(place - 1) + (cells[at] ?? '').padEnd(length),
      '',
    ),
  );
  const source = { syntax: 'fixed', columns, ...(groupBy && { groupBy }) } as const;
  return { mapping: { ...mapping, source }, text: lines.join('\n'), ...rest };
};

export const writeHl7v2: Writer = (draw) => {
  const { truths, person, field } = draw;
  const ids = draw.shuffled([
    `${field(person.mr)}^^^HARBOUR^${field('MR')}`,
    `${field(person.ss)}^^^TOWN^${field('SS')}`,
  ]);
  const groups = truths.map((truth, at) => {
    const sites = truth.sides.map((side) => `EYE^${field(side)}`).join('~');
    const fields: string[] = Array.from({ length: 20 }, () => '');
    fields[0] = String(at + 1);
    fields[1] = field('NM');
    fields[2] = field('MRD1');
    fields[3] = String(at + 1);
    fields[4] = field(truth.value);
    fields[5] = field(truth.unit);
    fields[10] = field('F');
    fields[19] = sites;
    const notes = draw.below(2) === 0 ? [`NTE|1||${field(truth.note)}`] : [];
    return [`OBX|${fields.join('|')}`, ...notes];
  });
  const orders = draw.shuffled(groups).flatMap((lines, at) => {
    const order = `OBR|${at + 1}||E${at}|EXAM|||20240205|||||||||||||||||||F`;
    return at === 0 || draw.below(3) === 0 ? [order, ...lines] : lines;
  });
  const text = [
    'MSH|^~\\&|A|B|C|D|20240301101500+0000||ORU^R01|20240205|P|2.5',
    `PID|1||${ids.join('~')}`,
    ...orders,
  ].join('\r');
  const items = itemsOf({
    kind: 'OBX',
    code: ['OBX-3'],
    value: 'OBX-5',
    side: 'OBX-20.2',
    unit: 'OBX-6',
    note: 'NTE-3',
  });
  const mapping = mappingOf(
    { syntax: 'hl7v2' },
    { id: 'MSH-10', person: 'PID-3', type: 'PID-3.5', items },
  );
  return { mapping, text, truths, person };
};

type XmlStyle = 'attribute' | 'child' | 'flat' | 'item' | 'outer' | 'item-child';

/** Elements in every way that they are put: side around the value, beside it, on it. */
export const writeXml: Writer = (draw) => {
  const { person, field } = draw;
  const style: XmlStyle = draw.pick(['attribute', 'child', 'flat', 'item', 'outer', 'item-child']);
  const several = style === 'item-child';
  const truths = several
    ? draw.truths
    : draw.truths.map((one) => ({ ...one, sides: one.sides.slice(0, 1) }));
  const parts = draw.shuffled(truths.map((truth) => xmlPart(truth, style, draw)));
  const ids = draw.shuffled([
    `<id type="${field('MR')}">${field(person.mr)}</id>`,
    `<id type="${field('SS')}">${field(person.ss)}</id>`,
  ]);
  const body = draw.shuffled([parts.join(''), `<pat>${ids.join('')}</pat>`]).join('');
  const text = `<export><exam no="20240205">${body}</exam></export>`;
  const about = { id: '@no', person: 'pat/id', type: 'pat/id/@type' };
  const source = { syntax: 'xml', exam: 'export/exam' } as const;
  return { mapping: xmlMapping(style, source, about), text, truths, person };
};

function xmlPart(truth: Truth, style: XmlStyle, draw: Draw): string {
  const { field } = draw;
  const [side = 'R'] = truth.sides;
  const gone = (text: string): string => (draw.below(2) === 0 ? field(text, '') : text);
  const value = (name: string): string =>
    gone(`<${name}${field(` unit="${truth.unit}"`)}>${field(truth.value)}</${name}>`);
  switch (style) {
    case 'attribute':
      return `<eye${field(` side="${side}"`)}>${value('mrd')}</eye>`;
    case 'child': {
      const sideElement = gone(`<side>${field(side)}</side>`);
      return `<eye>${draw.shuffled([sideElement, value('mrd')]).join('')}</eye>`;
    }
    case 'flat':
      return `<eyeside>${field(side)}</eyeside>${value('mrd')}`;
    case 'item':
      return `<m code="MRD1"${field(` side="${side}"`)}${field(` unit="${truth.unit}"`)}${field(` note="${truth.note}"`)}>${field(truth.value)}</m>`;
    case 'outer':
      return `<eye${field(` side="${side}"`)}><m code="MRD1"${field(` unit="${truth.unit}"`)}>${field(truth.value)}</m></eye>`;
    default: {
      const sides = truth.sides.map((one) => gone(`<side>${field(one)}</side>`));
      const unit = gone(`<u>${field(truth.unit)}</u>`);
      const all = [...sides, unit, gone(`<v>${field(truth.value)}</v>`)];
      return `<m code="MRD1">${draw.shuffled(all).join('')}</m>`;
    }
  }
}

type Source = { readonly syntax: 'xml'; readonly exam: string };
type About = { readonly id: string; readonly person: string; readonly type: string };

function xmlMapping(style: XmlStyle, source: Source, about: About): ReturnType<typeof mappingOf> {
  const wide = (name: string, side: string): ReturnType<typeof mappingOf> =>
    mappingOf(source, {
      ...about,
      fields: { [name]: { ...target, sideFrom: side, unitFrom: `${name}/@unit` } },
    });
  const code = ['m/@code'];
  switch (style) {
    case 'attribute':
      return wide('eye/mrd', 'eye/@side');
    case 'child':
      return wide('eye/mrd', 'eye/side');
    case 'flat':
      return wide('mrd', 'eyeside');
    case 'item':
      return mappingOf(
        { ...source, items: ['m'] },
        {
          ...about,
          items: itemsOf({ code, value: 'm', side: 'm/@side', unit: 'm/@unit', note: 'm/@note' }),
        },
      );
    case 'outer':
      return mappingOf(
        { ...source, items: ['eye/m'] },
        { ...about, items: itemsOf({ code, value: 'm', side: '../@side', unit: 'm/@unit' }) },
      );
    default:
      return mappingOf(
        { ...source, items: ['m'] },
        { ...about, items: itemsOf({ code, value: 'm/v', side: 'm/side', unit: 'm/u' }) },
      );
  }
}

/** Observations with sites in any order, qualifiers of other kinds, and entries in entries. */
export const writeCda: Writer = (draw) => {
  const { truths, person, field } = draw;
  const codes = { R: '24028007', L: '7771000' } as const;
  const qualifier = (name: string, value: string): string =>
    `<qualifier><name code="${field(name)}"/><value${field(` code="${value}"`, ' nullFlavor="UNK"')}/></qualifier>`;
  const observation = (truth: Truth, inner: string): string => {
    const sites = truth.sides.map((side) => {
      const own = [qualifier('272741003', codes[side])];
      if (draw.below(3) === 0) own.push(qualifier('106233006', codes[side === 'R' ? 'L' : 'R']));
      return `<targetSiteCode code="EYE">${draw.shuffled(own).join('')}</targetSiteCode>`;
    });
    const amount = `${field(` value="${truth.value}"`, ' nullFlavor="NI"')}${field(` unit="${truth.unit}"`)}`;
    const parts = draw.shuffled([
      `<code code="${field('MRD1')}"/>`,
      '<statusCode code="completed"/>',
      `<value xsi:type="PQ"${amount}/>`,
      ...sites,
      inner === '' ? '' : `<entryRelationship>${inner}</entryRelationship>`,
    ]);
    return `<observation classCode="OBS" moodCode="EVN">${parts.join('')}</observation>`;
  };
  let entries: string[] = [];
  for (const truth of draw.shuffled(truths)) {
    const inner = draw.below(2) === 0 ? (entries.pop() ?? '') : '';
    entries = [...entries, observation(truth, inner)];
  }
  const ids = draw.shuffled([
    `<id root="MR"${field(` extension="${person.mr}"`, ' nullFlavor="UNK"')}/>`,
    `<id root="SS"${field(` extension="${person.ss}"`, ' nullFlavor="UNK"')}/>`,
  ]);
  const text = [
    '<ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
    `<id root="1.2.3" extension="20240205"/><recordTarget><patientRole>${ids.join('')}</patientRole></recordTarget>`,
    '<component><structuredBody><component><section><code code="29545-1" codeSystem="2.16.840.1.113883.6.1"/>',
    ...entries.map((entry) => `<entry>${entry}</entry>`),
    '</section></component></structuredBody></component></ClinicalDocument>',
  ].join('');
  const role = 'ClinicalDocument/recordTarget/patientRole/id';
  const items = itemsOf({
    kind: 'observation',
    code: ['observation/code/@code'],
    value: 'observation/value',
    side: 'observation/targetSiteCode/qualifier/value/@code',
    unit: 'observation/value/@unit',
  });
  const mapping = mappingOf(
    { syntax: 'cda' },
    {
      id: 'ClinicalDocument/id/@extension',
      person: `${role}/@extension`,
      type: `${role}/@root`,
      items,
    },
  );
  // The mapping's condition is on the root, whose text is the kind of number here.
  return { mapping, text, truths, person };
};
