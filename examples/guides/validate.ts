import { fromJson, toOperationOutcome } from '../../src/index.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';

const text = `{
  "resourceType": "Bundle",
  "type": "collection",
  "entry": [{ "resource": { "resourceType": "Observation", "status": "final" } }]
}`;
const { value, issues } = fromJson(text);
if (issues.length > 0) console.log('this is not JSON that can be trusted');

const report = validateBundle(value);
console.log(report.valid, report.issues[0]?.code);
console.log(toOperationOutcome(report.issues).issue[0]?.severity);
