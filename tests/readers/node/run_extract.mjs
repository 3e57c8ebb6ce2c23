// Template-based extraction by the engine of the Australian e-Health Research Centre. Standard input:
// {"form", "response"}, a file with a Questionnaire and a QuestionnaireResponse; standard output:
// {"resources", "issues"}.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createInterface } from 'node:readline';

// Its modules import a folder, which Node takes in CommonJS alone.
const { inAppExtract } = createRequire(import.meta.url)('@aehrc/sdc-template-extract');

const known = new Map();

function formOf(file) {
  let form = known.get(file);
  if (form === undefined) {
    form = JSON.parse(readFileSync(file, 'utf8'));
    known.set(file, form);
  }
  return form;
}

for await (const line of createInterface({ input: process.stdin })) {
  const { form, response } = JSON.parse(line);
  const { extractSuccess, extractResult } = await inAppExtract(response, formOf(form), null);
  const outcome = extractSuccess ? extractResult.issues : extractResult;
  const resources = extractSuccess
    ? extractResult.extractedBundle.entry.map(({ resource }) => resource)
    : [];
  const issues = (outcome?.issue ?? []).map(({ details }) => details?.text ?? '');
  // Every template of a question that was left open is told, which is no fault.
  const faults = issues.filter((text) => !text.includes('does not have a target QR item'));
  console.log(JSON.stringify({ resources, issues: faults }));
}
