import type { Messy } from '../messy.ts';
import { type Random, seeded } from '../random.ts';

/** Yearly checks of vineyard workers, with the defects of old XML exports. */
export function messyDocument(seed: number, count: number): Messy {
  const random = seeded(seed);
  const marks: string[] = [];
  const exams: string[] = [];
  for (let number = 1; number <= count; number++) exams.push(exam(number, random, marks));
  const gap = random.pick(['\n', '', '\r\n  '] as const);
  const head = random.pick(['', '<?xml version="1.0"?>\n', '\ufeff'] as const);
  const text = `${head}<export xmlns="urn:vineyard">${gap}${exams.join(gap)}${gap}</export>\n`;
  return { text, units: count, marks };
}

function exam(number: number, random: Random, marks: string[]): string {
  const parts = [about(number, random)];
  const count = 2 + random.below(15);
  for (let at = 1; at <= count; at++) parts.push(part(`${number}-${at}`, random, marks));
  const status = random.pick(['done', 'done', 'done', 'done', 'draft', 'lost'] as const);
  const body = `<exam id="E-${number}" status="${status}">${parts.join('')}</exam>`;
  return random.chance(0.08) ? broken(body, random) : body;
}

function about(number: number, random: Random): string {
  const born = random.pick(['1970-05-12', '1970', '12/05/1970', ''] as const);
  const when = random.pick([
    '2024-03-01T09:45',
    '2024-03-01',
    '2024-03-01T09:45:00+01:00',
    '01/03/2024',
    '',
  ] as const);
  const worker = `<worker no="V-${number}" born="${born}" sex="f"><name>Ivy Trellis</name></worker>`;
  return `${worker}<when>${when}</when><written>2024-03-02T10:15:00Z</written>`;
}

/** Faults that leave the end of the exam to be found. */
function broken(body: string, random: Random): string {
  return random.pick([
    body.replace('</when>', ''),
    body.replace('<when>', '<when a=1>'),
    body.replace('<when>', '<when a="1" a="2">'),
    body.replace('<when>', '<when>\u0002'),
    body.replace('<when>', '<when><'),
    body.replace('</exam>', '<!-- no end </exam>'),
  ] as const);
}

function part(id: string, random: Random, marks: string[]): string {
  const mark = `text-${id}`;
  switch (random.below(8)) {
    case 0:
      marks.push(mark);
      return `<remarks>${mark} ${random.pick(remarks)}</remarks>`;
    case 1:
      return `<trachea>${random.pick(['yes', 'no', '?', '', 'NAD', ' yes '] as const)}</trachea>`;
    case 2:
      return `<drum><right>${random.pick(['N', 'A', 'N/E', 'WNL', ''] as const)}</right></drum>`;
    case 3:
      return measure(random);
    case 4:
      return finding(id, random, marks);
    case 5:
      return region(random);
    case 6:
      marks.push(mark);
      return `<shoe size="42">${mark}</shoe>`;
    default:
      return '<!-- checked -->';
  }
}

const remarks = [
  'a &amp; b',
  '<![CDATA[<5 mm & red]]>',
  'not <em>at all</em> swollen',
  '&nbsp;dry',
  '\u00e9 \u{1f347} &#x1F347;',
  'one\ntwo',
] as const;

function measure(random: Random): string {
  const value = random.pick(['4', '4.5', '4,5', '&lt;2', 'four', '', '1-2'] as const);
  const unit = random.pick([' unit="mm"', ' unit="cm"', ' unit="inch"', ''] as const);
  const side = random.pick([' side="R"', ' side="L"', ' side="OD"', ''] as const);
  const code = random.pick(['mrd1', 'opening', 'height'] as const);
  return `<measures><measure code="${code}"${unit}${side}>${value}</measure></measures>`;
}

function finding(id: string, random: Random, marks: string[]): string {
  const remark = random.chance(0.3) ? ` remark="note-${id}"` : '';
  if (remark !== '') marks.push(`note-${id}`);
  const side = random.pick([' side="R"', ' side="L"', ''] as const);
  const word = random.pick(['yes', 'no', '?', 'slight', ''] as const);
  const code = random.pick(['ptosis', 'rash', 'spleen'] as const);
  return `<findings><finding code="${code}"${side}${remark}>${word}</finding></findings>`;
}

function region(random: Random): string {
  const code = random.pick(['cheek', 'temple', 'knee'] as const);
  const side = random.pick(['R', 'L', 'B'] as const);
  return `<regions><region code="${code}" side="${side}"><sign code="naevus">yes</sign></region></regions>`;
}
