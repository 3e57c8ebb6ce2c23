import { resourceOf } from '../../../deliver/stored/json.ts';
import { fromJson } from '../../../fhir/json/from-json.ts';
import { toJson } from '../../../fhir/json/to-json.ts';
import type { Step } from '../context.ts';

/** @see https://hl7.org/fhir/R4/resource-operation-validate.html */
export const validation: Step = {
  id: 'validate',
  title: 'the server can be asked whether a resource is valid',
  needsExam: true,
  run: async ({ client, stored, measured }) => {
    const report = stored?.resources.find(({ sent }) => sent.resourceType === 'DiagnosticReport');
    if (report === undefined) return undefined;
    const path = 'DiagnosticReport/$validate';
    const answer = await client.send({ method: 'POST', path, body: toJson(report.sent) });
    const told = resourceOf(fromJson(answer.text).value)?.resourceType;
    // A verdict may come with 200, 400 or 422.
    const verdict = [200, 400, 412, 422].includes(answer.status);
    measured.validates = verdict && told === 'OperationOutcome';
    return undefined;
  },
};
