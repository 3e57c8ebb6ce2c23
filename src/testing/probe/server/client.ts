import { isJson, type JsonResource, resourceOf } from '../../../deliver/stored/json.ts';
import { fromJson } from '../../../fhir/json/from-json.ts';
import { type FhirVersion, fhirVersionNumber } from '../../../fhir/version.ts';
import { Misbehaved, type Misbehaviour, type ProbeNote } from '../misbehaviour.ts';
import type { ProbeSettings } from '../options.ts';
import { exchange, type HttpAnswer, type HttpRequest } from './exchange.ts';
import { askedWait } from './retry-after.ts';

export interface FhirRequest {
  readonly method: HttpRequest['method'];
  /** Relative to the base of the server. */
  readonly path: string;
  readonly body?: string;
  /** Default: FHIR JSON. */
  readonly accept?: string;
}

export interface Client {
  /**
   * The answer, whatever its status. Tells what is odd in it.
   * @throws Misbehaved where none comes
   */
  send(request: FhirRequest): Promise<HttpAnswer>;
  /**
   * The resource of an answer that must be a success.
   * @throws Misbehaved where it is none, or of another type
   */
  resource(request: FhirRequest, type: string): Promise<JsonResource>;
  tell(note: ProbeNote): void;
  /** Path of an absolute link of the server, relative to its base; undefined for another host. */
  pathOf(link: string): string | undefined;
  readonly counts: { requests: number; retries: number };
}

/** Failures of the connection in a row after which a server is asked nothing more. */
const MOST_FAILURES = 3;

const connectionFailures: ReadonlySet<Misbehaviour> = new Set<Misbehaviour>([
  'no-connection',
  'no-answer',
  'slow-answer',
  'cut-off-answer',
  'busy',
]);

export const FHIR_JSON = 'application/fhir+json';

/** A client of one server. It stops asking when `over` aborts. */
export function createClient(
  settings: ProbeSettings,
  over: AbortSignal,
  tell: (note: ProbeNote) => void,
): Client {
  const counts = { requests: 0, retries: 0 };
  const { base } = settings;
  let failures = 0;

  const repeated = async (request: HttpRequest): Promise<HttpAnswer> => {
    for (let attempt = 0; ; attempt++) {
      counts.requests += 1;
      const answer = await exchange(request, { ...settings, over });
      if (answer.status !== 429 && answer.status !== 503) return answer;
      const wait = askedWait(answer) ?? 500 * 2 ** attempt;
      if (attempt >= settings.retries) throw new Misbehaved('busy');
      if (wait > settings.longestWait) {
        const detail = `the server asks to wait ${Math.round(wait / 1000)} s, which is too long`;
        throw new Misbehaved('busy', { detail });
      }
      counts.retries += 1;
      await settings.sleep(wait);
    }
  };

  const send = async (request: FhirRequest): Promise<HttpAnswer> => {
    if (failures >= MOST_FAILURES)
      throw new Misbehaved('out-of-time', { request: nameOf(request) });
    const { method, path, body } = request;
    const headers = {
      accept: request.accept ?? `${FHIR_JSON};fhirVersion=${shortVersion(settings.fhirVersion)}`,
      ...(body !== undefined && { 'content-type': FHIR_JSON }),
      ...(settings.token !== undefined && { authorization: `Bearer ${settings.token}` }),
    };
    try {
      const url = new URL(path, base);
      const answer = await repeated({ method, url, headers, ...(body !== undefined && { body }) });
      failures = 0;
      return answer;
    } catch (thrown) {
      if (!(thrown instanceof Misbehaved)) throw thrown;
      if (connectionFailures.has(thrown.misbehaviour)) failures += 1;
      throw withRequest(thrown, request);
    }
  };

  const resource = async (request: FhirRequest, type: string): Promise<JsonResource> => {
    const answer = await send(request);
    try {
      refuseFailure(answer);
      return typed(parsed(answer, request, tell), type);
    } catch (thrown) {
      throw thrown instanceof Misbehaved ? withRequest(thrown, request) : thrown;
    }
  };

  return { send, resource, tell, counts, pathOf: (link) => pathOf(base, link) };
}

/** `4.0`, as the parameter of a content type has it. @see https://hl7.org/fhir/R4/http.html#version-parameter */
export function shortVersion(version: FhirVersion): string {
  return fhirVersionNumber[version].replace(/\.\d+$/, '');
}

/** What was asked, without ids and values: `GET DiagnosticReport`. */
export function nameOf({ method, path }: FhirRequest): string {
  return `${method} ${/^[A-Za-z$]*/.exec(path)?.[0] ?? ''}`.trimEnd();
}

function withRequest(thrown: Misbehaved, request: FhirRequest): Misbehaved {
  return new Misbehaved(thrown.misbehaviour, {
    detail: thrown.message,
    request: thrown.request ?? nameOf(request),
  });
}

/** @throws Misbehaved where the status is not a success */
export function refuseFailure({ status, text }: HttpAnswer): void {
  if (status >= 200 && status < 300) return;
  const detail = `the server answered with status ${status}`;
  if (status === 401 || status === 403) throw new Misbehaved('not-authorised', { detail });
  if (isHtml(text)) throw new Misbehaved('html-answer', { detail: `${detail} and a page of HTML` });
  throw new Misbehaved(status >= 500 ? 'server-fault' : 'unexpected-status', { detail });
}

function parsed(
  answer: HttpAnswer,
  request: FhirRequest,
  tell: (note: ProbeNote) => void,
): JsonResource {
  const { text } = answer;
  const type = mediaType(answer);
  if (type === 'text/html' || isHtml(text)) throw new Misbehaved('html-answer');
  if (text.trim() === '') throw new Misbehaved('empty-answer');
  if (type !== FHIR_JSON) {
    tell({
      misbehaviour: 'wrong-content-type',
      severity: 'warning',
      message: `the content type of an answer is not ${FHIR_JSON}`,
      request: nameOf(request),
    });
  }
  const { value } = fromJson(text);
  const found = resourceOf(value);
  if (found !== undefined) return found;
  if (value !== undefined) throw new Misbehaved('wrong-resource');
  throw new Misbehaved(isCutOff(text) ? 'truncated-json' : 'not-json');
}

function typed(found: JsonResource, type: string): JsonResource {
  if (found.resourceType === type) return found;
  if (found.resourceType === 'OperationOutcome' && saysError(found)) {
    throw new Misbehaved('success-with-error');
  }
  throw new Misbehaved('wrong-resource', { detail: `the answer is no ${type}` });
}

/** Whether an OperationOutcome tells of an error. */
export function saysError(outcome: JsonResource): boolean {
  const { issue } = outcome;
  return (
    Array.isArray(issue) &&
    issue.some(
      (one: unknown) => isJson(one) && (one['severity'] === 'error' || one['severity'] === 'fatal'),
    )
  );
}

export function mediaType(answer: HttpAnswer): string {
  return (answer.header('content-type') ?? '').split(';', 1)[0]?.trim().toLowerCase() ?? '';
}

/** Whether an answer says nothing that a program could read. */
export function isHtmlOrNothing({ text }: Pick<HttpAnswer, 'text'>): boolean {
  return text.trim() === '' || isHtml(text);
}

function isHtml(text: string): boolean {
  return /^\s*<(!doctype\s+html|html)[\s>]/i.test(text);
}

/** A JSON text that begins as an object and does not end as one. */
function isCutOff(text: string): boolean {
  const trimmed = text.trim();
  return trimmed.startsWith('{') && !trimmed.endsWith('}');
}

function pathOf(base: URL, link: string): string | undefined {
  if (!URL.canParse(link, base.href)) return undefined;
  const url = new URL(link, base.href);
  return url.origin === base.origin ? url.href : undefined;
}
