import type { Task } from 'fhir/r4.js';
import { idsOf } from '../fhir/names/ids.ts';
import type { HumanName } from '../model/people.ts';
import { lastDay, type Recall } from './recall.ts';

const columns = [
  'exam',
  'item',
  'patient',
  'name',
  'kind',
  'text',
  'due',
  'overdue',
  'urgency',
  'owner',
];

/** First line of the table. */
export const recallHead = `${columns.join(',')}\r\n`;

/**
 * Writes a recall as a line of CSV. A text that a spreadsheet would take for a formula is quoted by
 * `'`.
 *
 * @param recall From `recallsOf`.
 * @returns The line.
 * @example
 * const lines = recallsOf(exam, '2025-06-01').map(recallRow);
 * @see https://www.rfc-editor.org/rfc/rfc4180
 */
export function recallRow(recall: Recall): string {
  const { exam, item, kind, text, due, overdue, urgency, owner, subject } = recall;
  const patient = subject.identifiers?.[0]?.value ?? subject.reference;
  const overdueText = overdue === undefined ? 'not known' : overdue ? 'yes' : 'no';
  const cells = [
    exam,
    item,
    patient,
    nameOf(subject.name),
    kind,
    text,
    due,
    overdueText,
    urgency,
    owner,
  ];
  return `${cells.map((cell) => csvCell(cell ?? '')).join(',')}\r\n`;
}

function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function nameOf(name: HumanName | undefined): string {
  if (name === undefined) return '';
  return (
    name.text ?? [name.prefix, ...(name.given ?? []), name.family].filter((part) => part).join(' ')
  );
}

export const calendarHead =
  'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//face-neck-fhir//recall//EN\r\n';
export const calendarEnd = 'END:VCALENDAR\r\n';

/**
 * Writes a recall as a to-do of a calendar, due on the last day that its date can mean, where it has one.
 *
 * @param recall From `recallsOf`.
 * @param now The present in UTC, as 2025-06-01T08:00:00Z.
 * @returns The to-do as text of iCalendar.
 * @example
 * const todos = recallsOf(exam, '2025-06-01').map((one) => recallTodo(one, '2025-06-01T08:00:00Z'));
 * @see https://www.rfc-editor.org/rfc/rfc5545#section-3.6.2
 */
export function recallTodo(recall: Recall, now: string): string {
  const stamp = `${now.slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
  const { text, due, owner, kind, subject, urgency } = recall;
  const who = [nameOf(subject.name), subject.identifiers?.[0]?.value]
    .filter((part) => part)
    .join(' ');
  const lines = [
    'BEGIN:VTODO',
    `UID:${recallId(recall)}`,
    `DTSTAMP:${stamp}`,
    ...(due === undefined ? [] : [`DUE;VALUE=DATE:${lastDay(due).replaceAll('-', '')}`]),
    `SUMMARY:${calendarText(`${kind}: ${text}${who === '' ? '' : ` (${who})`}`)}`,
    ...(owner === undefined ? [] : [`CONTACT:${calendarText(owner)}`]),
    ...(urgency === undefined || urgency === 'routine' ? [] : ['PRIORITY:1']),
    'STATUS:NEEDS-ACTION',
    'CLASS:CONFIDENTIAL',
    'END:VTODO',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function calendarText(text: string): string {
  return text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n');
}

const encoder = new TextEncoder();

/** Lines of at most 75 octets, and no character broken in two. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let size = 0;
  for (const character of line) {
    const octets = encoder.encode(character).length;
    if (size + octets > 74) {
      parts.push(part);
      part = '';
      size = 0;
    }
    part += character;
    size += octets;
  }
  return [...parts, part].join('\r\n ');
}

/**
 * Writes a recall as a Task of FHIR R4, asked for and not begun.
 *
 * @param recall From `recallsOf`.
 * @returns The resource.
 * @example
 * const tasks = recallsOf(exam, '2025-06-01').map(recallTask);
 * @see https://hl7.org/fhir/R4/task.html
 */
export function recallTask(recall: Recall): Task {
  const { kind, text, due, owner, urgency, subject } = recall;
  const [identifier] = subject.identifiers ?? [];
  const name = nameOf(subject.name);
  return {
    resourceType: 'Task',
    id: recallId(recall),
    status: 'requested',
    intent: 'plan',
    ...(urgency !== undefined && { priority: urgency as Task['priority'] & string }), // the same list of codes
    code: { text: kind },
    description: text,
    for: {
      ...(subject.reference !== undefined && { reference: subject.reference }),
      ...(identifier && { identifier: { system: identifier.system, value: identifier.value } }),
      ...(name !== '' && { display: name }),
    },
    ...(owner !== undefined && { owner: { display: owner } }),
    ...(due !== undefined && { restriction: { period: { end: due } } }),
  };
}

function recallId({ exam, item, kind }: Recall): string {
  return idsOf('recall', exam)(item ?? kind);
}
