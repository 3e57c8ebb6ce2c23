import type { FhirVersion } from '../../fhir/version.ts';
import { faultIds } from '../faults/apply-fault.ts';
import { sampledFaults } from './sampled-faults.ts';

/** Bounds of a probe, and what it may do. */
export interface ProbeOptions {
  /** Default `R4`. */
  readonly fhirVersion?: FhirVersion;
  /** Delete at the end what the probe has stored. Default false. */
  readonly clean?: boolean;
  /** Allow a server that is not on this machine. Default false: other addresses throw. */
  readonly remote?: boolean;
  /** OAuth 2.0 bearer token. It is sent over https or to this machine only, and never told. */
  readonly token?: string;
  /**
   * Names the run: every id follows from it, so that the same run updates what it stored before.
   * Letters, digits and hyphens, at most 40. Default `1`.
   */
  readonly run?: string;
  /** Entries of a large exam that is sent to find the limit of the server; 0 for none. Default 600. */
  readonly entries?: number;
  /** Ids of the faults to send; none for an empty list. Default: a sample of the catalogue. */
  readonly faults?: readonly string[];
  /** Milliseconds for one answer, from the request to its last byte. Default 60000. */
  readonly timeout?: number;
  /** Milliseconds for the whole probe; cleaning gets as much again. Default 600000. */
  readonly totalTime?: number;
  /** How often a request is sent again after 429 or 503. Default 4. */
  readonly retries?: number;
  /** Most milliseconds to wait before one retry, whatever `Retry-After` asks for. Default 30000. */
  readonly longestWait?: number;
  /** Most bytes of one answer. Default 8 MiB. */
  readonly mostBytes?: number;
  /** How to wait before a retry. Default: a timer. */
  readonly sleep?: (milliseconds: number) => Promise<void>;
}

/** Options with their defaults. */
export interface ProbeSettings extends Required<Omit<ProbeOptions, 'token'>> {
  readonly token: string | undefined;
  readonly base: URL;
}

/**
 * Checked settings for an address.
 * @throws TypeError where the address or an option cannot be used
 */
export function probeSettings(address: string, options: ProbeOptions): ProbeSettings {
  const base = baseUrl(address);
  const { token, remote = false, run = '1' } = options;
  const local = isLoopback(base);
  if (!local && !remote) {
    throw new TypeError('cannot probe a server that is not on this machine unless told to');
  }
  if (!/^[A-Za-z0-9-]{1,40}$/.test(run)) {
    throw new TypeError('cannot name the run so: expected 1 to 40 letters, digits and hyphens');
  }
  if (token !== undefined) {
    // RFC 6750 section 2.1
    if (!/^[A-Za-z0-9\-._~+/]+=*$/.test(token)) {
      throw new TypeError('cannot send the token: expected the characters of a bearer token');
    }
    // RFC 6750 section 5.3
    if (base.protocol !== 'https:' && !local) {
      throw new TypeError('cannot send a token without encryption: expected an https address');
    }
  }
  return {
    base,
    token,
    remote,
    run,
    fhirVersion: options.fhirVersion ?? 'R4',
    clean: options.clean ?? false,
    faults: knownFaults(options.faults ?? sampledFaults),
    entries: limit('entries', options.entries, 600, 0),
    timeout: limit('timeout', options.timeout, 60_000, 1),
    totalTime: limit('totalTime', options.totalTime, 600_000, 1),
    retries: limit('retries', options.retries, 4, 0),
    longestWait: limit('longestWait', options.longestWait, 30_000, 0),
    mostBytes: limit('mostBytes', options.mostBytes, 8 * 2 ** 20, 1),
    sleep: options.sleep ?? timer,
  };
}

function knownFaults(ids: readonly string[]): readonly string[] {
  if (ids.every((id) => faultIds.includes(id))) return ids;
  throw new TypeError('cannot send a fault: expected ids of faultIds');
}

function baseUrl(address: string): URL {
  if (!URL.canParse(address)) throw new TypeError('cannot probe this: expected a URL');
  const url = new URL(address);
  if (url.protocol !== 'http:' && url.protocol !== 'https:') {
    throw new TypeError('cannot probe this: expected an http or https URL');
  }
  if (url.username !== '' || url.password !== '' || url.search !== '' || url.hash !== '') {
    throw new TypeError('cannot probe this: expected a URL without login, query and fragment');
  }
  url.pathname = `${url.pathname.replace(/\/+$/, '')}/`;
  return url;
}

/** Whether a URL leads to this machine: 127.0.0.0/8, ::1 or localhost. */
export function isLoopback({ hostname }: { readonly hostname: string }): boolean {
  return hostname === 'localhost' || hostname === '[::1]' || /^127\.\d+\.\d+\.\d+$/.test(hostname);
}

function limit(name: string, given: number | undefined, fallback: number, least: number): number {
  if (given === undefined) return fallback;
  // A timer of Node takes at most 2^31 - 1 milliseconds.
  if (!Number.isSafeInteger(given) || given < least || given > 2 ** 31 - 1) {
    throw new TypeError(`cannot use ${name}: expected a whole number from ${least}`);
  }
  return given;
}

function timer(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}
