import { append } from '../../../data/append.ts';
import { isObject, type JsonObject, objectsOf, textOf } from '../../walk/json.ts';

/** What the adapter needs of `fetch`; that of browsers and of Node fits. */
export type Fetch = (
  url: string,
  init: {
    readonly method: 'POST';
    readonly headers: Readonly<Record<string, string>>;
    readonly body: string;
    readonly signal: AbortSignal;
  },
) => Promise<{ readonly ok: boolean; readonly status: number; text(): Promise<string> }>;

/** The server and how it is asked. */
export interface TerminologyOptions {
  /** Where the server's FHIR interface begins: `https://tx.clinic.example/fhir`. */
  readonly baseUrl: string;
  /** Makes the requests; the global `fetch` fits. */
  readonly fetch: Fetch;
  /** Sent with each request, for a server that asks who calls. */
  readonly headers?: Readonly<Record<string, string>>;
  /** Milliseconds after which a request counts as unanswered. Default 10,000. */
  readonly timeout?: number;
  /** Requests that may be made at all; what comes later is not checked. Default 1,000. */
  readonly maxRequests?: number;
  /** Requests at a time. Default 4. */
  readonly concurrency?: number;
  /** Answers that are kept. Default 10,000. */
  readonly cacheSize?: number;
}

/** A code and the value set that it should be in. */
export interface CodeQuestion {
  /** Canonical URL of the value set, with version after `|` or without. */
  readonly valueSet: string;
  /** None of an element of type code, whose system the value set tells. */
  readonly system: string | undefined;
  readonly code: string;
}

/** What a terminology server says about a code and a value set. */
export type CodeAnswer =
  | { readonly answer: 'in' | 'not-in' }
  /** Nothing is known: the server is down, does not know the set or the system, or was asked enough. */
  | { readonly answer: 'not-checked'; readonly why: string };

/** The codes of a value set. */
export interface Expansion {
  readonly codes: readonly { readonly system: string; readonly code: string }[];
}

/**
 * A terminology server behind two questions. Neither throws on what a server does; answers are kept,
 * unanswered questions are not.
 */
export interface Terminology {
  /** Whether a code is in a value set. */
  validateCode(question: CodeQuestion): Promise<CodeAnswer>;
  /** Every code of a value set; `undefined` where the server does not list it whole. */
  expand(valueSet: string): Promise<Expansion | undefined>;
}

/** Answers are some kilobytes; an expansion of thousands of codes fits. */
const longest = 10_000_000;
/** Of an expansion. */
const mostCodes = 5_000;
/** After so many requests in a row without an answer the server counts as down. */
const patience = 3;

/**
 * Makes a client of a terminology server for `$validate-code` and `$expand`, cached and bounded.
 *
 * @param options Address of the server, `fetch`, and bounds on time and requests; see
 *   {@link TerminologyOptions}.
 * @returns The client. It does not throw on anything a server does: a question that is not answered
 *   is told as not checked.
 * @example
 * const terminology = createTerminology({ baseUrl: 'https://tx.clinic.example/fhir', fetch });
 * const checked = await withTerminology(bundle, validation, terminology);
 * @see https://hl7.org/fhir/R4/valueset-operation-validate-code.html
 */
export function createTerminology(options: TerminologyOptions): Terminology {
  const { timeout = 10_000, maxRequests = 1_000, concurrency = 4, cacheSize = 10_000 } = options;
  const answers = new Map<string, Promise<CodeAnswer>>();
  const expansions = new Map<string, Promise<Expansion | undefined>>();
  const waiting: (() => void)[] = [];
  let running = 0;
  let asked = 0;
  let failures = 0;

  const turn = async <T>(task: () => Promise<T>): Promise<T> => {
    if (running >= concurrency) await new Promise<void>((resolve) => waiting.push(resolve));
    running++;
    try {
      return await task();
    } finally {
      running--;
      waiting.shift()?.();
    }
  };

  const ask = (path: string, parameter: readonly JsonObject[]): Promise<Reply> =>
    turn(async () => {
      if (failures >= patience) return { why: 'the terminology server does not answer' };
      if (asked >= maxRequests) return { why: 'the terminology server was asked often enough' };
      asked++;
      const reply = await request(options, path, parameter, timeout);
      failures = reply.silent === true ? failures + 1 : 0;
      return reply;
    });

  const kept = <T>(
    cache: Map<string, Promise<T>>,
    key: string,
    make: () => Promise<T>,
    keep: (answer: T) => boolean,
  ): Promise<T> => {
    const known = cache.get(key);
    if (known !== undefined) return known;
    const made = make();
    const oldest = cache.size >= cacheSize ? cache.keys().next().value : undefined;
    if (oldest !== undefined) cache.delete(oldest);
    cache.set(key, made);
    return made.then((answer) => {
      if (!keep(answer)) cache.delete(key);
      return answer;
    });
  };

  const expand = (valueSet: string): Promise<Expansion | undefined> => {
    const make = async (): Promise<Expansion | undefined> => {
      const count = { name: 'count', valueInteger: mostCodes };
      return expansionIn(await ask('ValueSet/$expand', [...canonical(valueSet), count]));
    };
    return kept(expansions, valueSet, make, (found) => found !== undefined);
  };

  return {
    expand,
    validateCode(question) {
      const { valueSet, system, code } = question;
      const key = JSON.stringify([valueSet, system, code]);
      const make = async (): Promise<CodeAnswer> => {
        const reply = await ask('ValueSet/$validate-code', [
          ...canonical(valueSet),
          { name: 'code', valueCode: code },
          ...(system === undefined
            ? [{ name: 'inferSystem', valueBoolean: true }]
            : [{ name: 'system', valueUri: system }]),
        ]);
        const answer = answerIn(reply);
        // A server that infers no system says no to every code without one; the list of all tells.
        if (system !== undefined || answer.answer !== 'not-in') return answer;
        return listedIn(await expand(valueSet), code);
      };
      return kept(answers, key, make, ({ answer }) => answer !== 'not-checked');
    },
  };
}

function listedIn(expansion: Expansion | undefined, code: string): CodeAnswer {
  if (expansion === undefined) {
    const why =
      'the terminology server finds no system of the code, and does not list the value set';
    return { answer: 'not-checked', why };
  }
  return { answer: expansion.codes.some((one) => one.code === code) ? 'in' : 'not-in' };
}

function canonical(valueSet: string): JsonObject[] {
  const [url = '', version] = valueSet.split('|');
  const asked = { name: 'url', valueUri: url };
  return version === undefined
    ? [asked]
    : [asked, { name: 'valueSetVersion', valueString: version }];
}

interface Reply {
  readonly body?: JsonObject;
  readonly why?: string;
  /** There was no answer at all, or none in time. */
  readonly silent?: true;
}

async function request(
  { baseUrl, fetch, headers }: TerminologyOptions,
  path: string,
  parameter: readonly JsonObject[],
  timeout: number,
): Promise<Reply> {
  const stop = new AbortController();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Reply>((resolve) => {
    timer = setTimeout(() => {
      stop.abort();
      resolve({ why: 'the terminology server did not answer in time', silent: true });
    }, timeout);
  });
  const answer = async (): Promise<Reply> => {
    const response = await fetch(`${baseUrl.replace(/\/+$/, '')}/${path}`, {
      method: 'POST',
      headers: {
        accept: 'application/fhir+json',
        'content-type': 'application/fhir+json',
        ...headers,
      },
      body: JSON.stringify({ resourceType: 'Parameters', parameter }),
      signal: stop.signal,
    });
    const text = await response.text();
    if (!response.ok) {
      const silent = response.status >= 500 ? ({ silent: true } as const) : {};
      return { why: `the terminology server answered with status ${response.status}`, ...silent };
    }
    return { body: bodyOf(text), why: 'the answer of the terminology server is of no known form' };
  };
  try {
    return await Promise.race([answer(), late]);
  } catch {
    return { why: 'the terminology server could not be reached', silent: true };
  } finally {
    clearTimeout(timer);
  }
}

function bodyOf(text: string): JsonObject {
  if (text.length > longest) return {};
  try {
    const value: unknown = JSON.parse(text);
    return isObject(value) ? value : {};
  } catch {
    return {};
  }
}

function answerIn({ body, why = '' }: Reply): CodeAnswer {
  const parameters = body?.['resourceType'] === 'Parameters' ? objectsOf(body['parameter']) : [];
  const result = parameters.find(({ name }) => name === 'result')?.['valueBoolean'];
  if (typeof result !== 'boolean') return { answer: 'not-checked', why };
  if (!result && isIgnorance(parameters)) {
    const unknown = 'the terminology server does not know the code system or the value set';
    return { answer: 'not-checked', why: unknown };
  }
  return { answer: result ? 'in' : 'not-in' };
}

/** A server that says no because it lacks the code system has not looked. */
function isIgnorance(parameters: readonly JsonObject[]): boolean {
  return parameters.some(({ name, resource, valueString }) => {
    // HAPI FHIR says no to a value set that it does not have, and tells why in words alone.
    if (name === 'message' && /unknown or unusable valueset/i.test(textOf(valueString) ?? '')) {
      return true;
    }
    if (/^x-(?:unknown|caused-by-unknown)-system$/.test(textOf(name) ?? '')) return true;
    const issues = isObject(resource) ? objectsOf(resource['issue']) : [];
    return issues.some(({ code }) => code === 'not-found' || code === 'not-supported');
  });
}

function expansionIn({ body }: Reply): Expansion | undefined {
  const expansion = isObject(body?.['expansion']) ? body['expansion'] : undefined;
  if (body?.['resourceType'] !== 'ValueSet' || expansion === undefined) return undefined;
  const codes: { system: string; code: string }[] = [];
  const open = [...objectsOf(expansion['contains'])];
  for (let entry = open.pop(); entry !== undefined; entry = open.pop()) {
    append(open, objectsOf(entry['contains']));
    const code = textOf(entry['code']);
    if (code !== undefined && entry['abstract'] !== true) {
      codes.push({ system: textOf(entry['system']) ?? '', code });
    }
  }
  const { total } = expansion;
  // A page of it, or a set that it could not list to the end, is not the whole.
  const whole = typeof total === 'number' ? codes.length >= total : codes.length < mostCodes;
  return whole && codes.length > 0 ? { codes } : undefined;
}
