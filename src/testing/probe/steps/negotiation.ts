import type { ProbeContext, Step } from '../context.ts';
import { Misbehaved } from '../misbehaviour.ts';
import { FHIR_JSON, mediaType, shortVersion } from '../server/client.ts';

const xml = 'application/fhir+xml';

/** What is asked for, and the content types that answer it. */
const questions = [
  { accept: FHIR_JSON, path: 'metadata', types: [FHIR_JSON], must: true },
  {
    accept: '*/*',
    path: `metadata?_format=${encodeURIComponent(FHIR_JSON)}`,
    types: [FHIR_JSON],
    must: true,
  },
  { accept: xml, path: 'metadata', types: [xml], must: false },
  { accept: 'image/png', path: 'metadata', types: [], must: false },
] as const;

/** Another version of FHIR than the one probed, and one that nobody has. */
const otherVersion = '1.0';

/** @see https://hl7.org/fhir/R4/http.html#mime-type and #version-parameter */
export const negotiation: Step = {
  id: 'negotiation',
  title: 'content type and version of FHIR are agreed on',
  run: async (context) => {
    for (const question of questions) await ask(context, question);
    const { fhirVersion } = context.settings;
    const right = `${FHIR_JSON};fhirVersion=${shortVersion(fhirVersion)}`;
    await ask(context, { accept: right, path: 'metadata', types: [FHIR_JSON], must: true });
    const wrong = `${FHIR_JSON};fhirVersion=${otherVersion}`;
    await ask(context, { accept: wrong, path: 'metadata', types: [], must: false });
    return undefined;
  },
};

interface Question {
  readonly accept: string;
  readonly path: string;
  readonly types: readonly string[];
  /** The answer must be a success; or else the server may refuse what it does not have (406). */
  readonly must: boolean;
}

async function ask({ client }: ProbeContext, question: Question): Promise<void> {
  const { accept, path, types, must } = question;
  const answer = await client.send({ method: 'GET', path, accept });
  const success = answer.status >= 200 && answer.status < 300;
  if (must && !success) {
    const detail = `${accept} was answered with status ${answer.status}`;
    throw new Misbehaved('unexpected-status', { detail });
  }
  // A refusal is an answer; 415 and 400 are in use beside 406.
  if (!success || types.includes(mediaType(answer))) return;
  client.tell({
    misbehaviour: must ? 'wrong-content-type' : 'ignored-content-type',
    severity: must ? 'warning' : 'information',
    message: `asked for ${accept}`,
    request: 'GET metadata',
  });
}
