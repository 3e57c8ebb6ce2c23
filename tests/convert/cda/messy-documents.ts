import type { Messy } from '../messy.ts';
import { type Random, seeded } from '../random.ts';
import { documentEnd, header, sectionEnd, sectionStart } from './suite.ts';

/** Yearly checks of harbour workers, with the defects of old C-CDA exports, one document after another. */
export function messyDocuments(seed: number, count: number): Messy {
  const random = seeded(seed);
  const marks: string[] = [];
  const documents: string[] = [];
  for (let number = 1; number <= count; number++) documents.push(document(number, random, marks));
  return { text: documents.join('\n'), units: count, marks };
}

function document(number: number, random: Random, marks: string[]): string {
  const mark = `story-${number}`;
  marks.push(mark);
  const narrative = `<text>${mark} ${random.pick(narratives)}</text>`;
  const count = 1 + random.below(12);
  const entries = Array.from({ length: count }, (_, at) => entry(`${number}-${at}`, random, marks));
  const start = random.chance(0.04)
    ? ['<component><section>', '<code code="OTHER"/>']
    : sectionStart;
  const other = random.chance(0.3) ? otherSection : '';
  const lines = [...header(`D-${number}`), other, ...start, narrative, ...entries, sectionEnd];
  const text = [...lines, documentEnd].join('\n');
  return random.chance(0.08) ? broken(text, random) : text;
}

const narratives = [
  'All normal to examination.',
  '<content ID="m">MRD1 right 4 mm</content>',
  '<paragraph>no <content revised="delete">rash</content></paragraph>',
  '<table><tr><th>Side</th><td>R &amp; L</td></tr></table>',
  '\u00e9 &nbsp; <![CDATA[<5 mm]]>',
] as const;

const otherSection =
  '<component><section><code code="MEDS"/><title>Medicines</title><text>none</text></section></component>';

function broken(text: string, random: Random): string {
  return random.pick([
    text.replace('</recordTarget>', ''),
    text.replace('<recordTarget>', '<recordTarget a=1>'),
    text.replace('urn:hl7-org:v3', 'urn:other'),
    text.replace('<recordTarget>', '<recordTarget/><recordTarget>'),
    text.replace('<title>', '<title>\u0003'),
  ] as const);
}

function entry(id: string, random: Random, marks: string[]): string {
  const negated = random.pick(['', '', '', ' negationInd="true"', ' negationInd="false"'] as const);
  const mood = random.pick(['EVN', 'EVN', 'EVN', 'EVN', 'INT', 'GOL'] as const);
  const status = random.pick(['completed', 'completed', 'completed', 'active', 'aborted'] as const);
  const reference = random.chance(0.2) ? '<text><reference value="#m"/></text>' : '';
  const [code, value] = observation(id, random, marks);
  const inner = `<code code="${code}"/>${reference}<statusCode code="${status}"/>${value}${site(random)}`;
  const act = `<observation classCode="OBS" moodCode="${mood}"${negated}>${inner}</observation>`;
  if (random.chance(0.1)) {
    return `<entry><organizer classCode="CLUSTER" moodCode="EVN"><component>${act}</component></organizer></entry>`;
  }
  return `<entry>${act}</entry>`;
}

function observation(id: string, random: Random, marks: string[]): readonly [string, string] {
  const mark = `said-${id}`;
  switch (random.below(6)) {
    case 0:
      marks.push(mark);
      return ['REMARK', `<value xsi:type="ST">${mark} dry &amp; red</value>`];
    case 1:
      return ['MRD1', random.pick(quantities)];
    case 2:
      return ['PTOSIS', random.pick(words)];
    case 3:
      return ['TM', random.pick(words)];
    case 4:
      marks.push(mark);
      return ['SPLEEN', `<value xsi:type="ST">${mark}</value>`];
    default:
      return ['ASSERTION', '<value xsi:type="CD" code="RASH"/>'];
  }
}

const quantities = [
  '<value xsi:type="PQ" value="4" unit="mm"/>',
  '<value xsi:type="PQ" value="0.4" unit="cm"/>',
  '<value xsi:type="PQ" value="4"/>',
  '<value xsi:type="PQ" nullFlavor="OTH"><originalText>two fingers</originalText></value>',
  '<value xsi:type="IVL_PQ"><low value="3" unit="mm"/></value>',
  '<value xsi:type="ST">four</value>',
] as const;

const words = [
  '<value xsi:type="CD" code="P"/>',
  '<value xsi:type="CD" code="A" displayName="absent"/>',
  '<value xsi:type="CD" code="N"/>',
  '<value xsi:type="CD" nullFlavor="UNK"/>',
  '<value xsi:type="BL" value="true"/>',
  '',
] as const;

function site(random: Random): string {
  const side = random.pick(['24028007', '7771000', '24028007', '7771000', 'UP', ''] as const);
  if (side === '') return '';
  return `<targetSiteCode code="SITE"><qualifier><name code="SIDE"/><value code="${side}"/></qualifier></targetSiteCode>`;
}
