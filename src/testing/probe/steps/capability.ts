import { fhirVersionNumber } from '../../../fhir/version.ts';
import type { Step } from '../context.ts';
import type { ProbeNote } from '../misbehaviour.ts';
import { FHIR_JSON, shortVersion } from '../server/client.ts';
import { declaredBy } from '../server/declared.ts';

/** @see https://hl7.org/fhir/R4/http.html#capabilities */
export const capability: Step = {
  id: 'capability',
  title: 'the CapabilityStatement is there and declares what is needed',
  run: async (context) => {
    const { client, settings } = context;
    const request = { method: 'GET', path: 'metadata' } as const;
    const declared = declaredBy(await client.resource(request, 'CapabilityStatement'));
    context.declared = declared;
    const wanted = fhirVersionNumber[settings.fhirVersion];
    if (!declared.fhirVersion?.startsWith(`${shortVersion(settings.fhirVersion)}.`)) {
      client.tell({
        misbehaviour: 'wrong-version',
        severity: 'error',
        message: `expected a server of FHIR ${wanted}`,
      });
    }
    const missing = (what: string): ProbeNote => ({
      misbehaviour: 'not-declared',
      severity: 'information',
      message: what,
    });
    if (!declared.formats.some((format) => format === FHIR_JSON || format === 'json')) {
      client.tell(missing(`the format ${FHIR_JSON}`));
    }
    if (!declared.interactions.includes('transaction')) client.tell(missing('transactions'));
    return undefined;
  },
};
