import { base64Bytes, sha1Base64 } from '../../data/base64.ts';
import { reportCategory } from '../../fhir/filing.ts';
import { resourceName } from '../../fhir/names/resource-names.ts';
import { reportStatus } from '../../fhir/record-status.ts';
import { issue } from '../../issues/issue.ts';
import { pictureUrlOf } from '../../kinds/registries/from-observation.ts';
import type { Exam, ExamTime } from '../../model/exam.ts';
import type { RecordStatus } from '../../model/record-event.ts';
import {
  claimEqual,
  dateTimeOf,
  type Element,
  innerOf,
  innersOf,
  instantOf,
  lookAt,
  peek,
} from '../bundle/element.ts';
import { claimFrame, type Entry } from '../bundle/entries.ts';
import type { Groups } from '../bundle/groups.ts';
import { claimReference, claimReferences, targetName, targetOf } from '../bundle/reference.ts';
import { claimCodings, codingsBeside } from '../observation/concept.ts';
import type { ExamReading, Reading } from '../reading.ts';

/** What the report itself says of the exam. */
export interface ReportHead {
  readonly status: RecordStatus | undefined;
  readonly performed: ExamTime | undefined;
  readonly recorded: string | undefined;
}

const statuses: readonly RecordStatus[] = [
  'preliminary',
  'final',
  'amended',
  'corrected',
  'appended',
  'cancelled',
  'entered-in-error',
];

export function readReport(reading: Reading, report: Entry): ReportHead {
  const { resource } = report;
  claimFrame(reading, report, resourceName.report);
  const own = claimExamCode(reading, innerOf(resource, 'code'));
  claimEqual(resource, 'category', [reportCategory(reading.filing)]);
  if (own) {
    claimForms(resource);
    if (peek(resource, 'result') === undefined) reportAlone(reading, report);
  }
  for (const identifier of innersOf(resource, 'identifier')) claimExamId(reading, identifier);
  return {
    status: statusOf(resource, own),
    performed: timeOf(resource),
    recorded: instantOf(resource, 'issued'),
  };
}

/** An export of ours without results leaves out everything but the report. */
function reportAlone({ issues }: Reading, { path }: Entry): void {
  const severity = 'warning';
  issues.push(issue('not-exported', path, { reason: 'report-alone' }, { severity }));
}

/**
 * By its definition a form says the same as the report; one that is not as it was sent is left over.
 * @see https://hl7.org/fhir/R4/diagnosticreport-definitions.html#DiagnosticReport.presentedForm
 */
function claimForms(report: Element): void {
  for (const { at, json } of innersOf(report, 'presentedForm')) {
    const forms = peek(report, 'presentedForm');
    if (Array.isArray(forms) && isWhole(json)) report.claims.claimAll(forms, at);
  }
}

function isWhole({ data, hash, size }: Readonly<Record<string, unknown>>): boolean {
  if (typeof data !== 'string') return true;
  const bytes = bytesOf(data);
  if (bytes === undefined) return false;
  return (
    (hash === undefined || hash === sha1Base64(bytes)) &&
    (size === undefined || String(size) === String(bytes.length))
  );
}

function bytesOf(text: string): Uint8Array | undefined {
  try {
    return base64Bytes(text);
  } catch {
    return undefined;
  }
}

/** `partial` is a draft where we wrote it; what others mean by it is not ours to say. */
function statusOf(resource: Element, own: boolean): RecordStatus | undefined {
  const stated = statuses.find((status) => reportStatus(status) === peek(resource, 'status'));
  const status = stated ?? (own && peek(resource, 'status') === 'partial' ? 'draft' : undefined);
  if (status !== undefined) claimEqual(resource, 'status', reportStatus(status));
  return status;
}

function timeOf(resource: Element): ExamTime | undefined {
  const moment = dateTimeOf(resource, 'effectiveDateTime');
  if (moment !== undefined) return { start: moment };
  const period = lookAt(resource, 'effectivePeriod');
  const start = period && dateTimeOf(period, 'start');
  if (period === undefined || start === undefined) return undefined;
  innerOf(resource, 'effectivePeriod');
  const end = dateTimeOf(period, 'end');
  return { start, ...(end !== undefined && { end }) };
}

function claimExamId({ systems, id }: Reading, identifier: Element): void {
  if (peek(identifier, 'system') !== systems.exam || peek(identifier, 'value') !== id) return;
  claimEqual(identifier, 'system', systems.exam);
  claimEqual(identifier, 'value', id);
}

/** Claims the code of an exam, LOINC before ours, on report and document; true when it is there. */
export function claimExamCode(reading: Reading, concept: Element | undefined): boolean {
  const row = reading.catalogue.items.get('exam');
  if (concept === undefined || row === undefined) return false;
  const system = reading.lookup.systemOf('items', 'exam');
  const all = [
    { system, code: 'exam', display: row.display },
    ...codingsBeside(reading, { table: 'items', code: 'exam', maps: row.maps }),
  ];
  const own = innersOf(concept, 'coding').some((coding) => peek(coding, 'system') === system);
  claimCodings(concept, all.reverse());
  claimEqual(concept, 'text', row.display);
  return own;
}

/** Claims what the report says of its parts, once they are read. */
export function claimResults(
  reading: ExamReading,
  report: Entry,
  groups: Groups,
  statements: Exam['statements'],
): void {
  const { resource } = report;
  claimReferences(reading, resource, 'result', (reference) => {
    const target = targetOf(reading, reference, report);
    if (target === undefined) return undefined;
    return groups.get(targetName(target)) ?? reading.statementOf(reference, report);
  });
  const pictures = new Set(statements.flatMap((one) => pictureUrlOf(one) ?? []));
  for (const media of innersOf(resource, 'media')) {
    const link = lookAt(media, 'link');
    const target = link && targetOf(reading, link, report);
    if (typeof target === 'object' && pictures.has(urlOf(target))) {
      claimReference(reading, media, 'link');
    }
  }
}

function urlOf({ resource }: Entry): string {
  const content = peek(resource, 'content');
  const holder: unknown = Array.isArray(content) ? content[0] : content;
  const { attachment = holder } = (holder ?? {}) as { attachment?: unknown }; // read as unknown alone
  const { url } = (attachment ?? {}) as { url?: unknown }; // likewise
  return typeof url === 'string' ? url : '';
}
