// Template-based extraction by the engine of the Australian e-Health Research Centre. Standard input:
// {"form", "response"}, a file with a Questionnaire and a QuestionnaireResponse; standard output:
// {"resources", "issues"}.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createInterface } from 'node:readline';

// Its modules import a folder, which Node takes in CommonJS alone.
const require = createRequire(import.meta.url);
const { inAppExtract } = require('@aehrc/sdc-template-extract');
const fhirpath = require('fhirpath');

// The engine has each expression parsed again for each answer, and asks a response the same for each
// element of a template: two thirds of its time. What it asks of a response it only looks at, and puts
// nothing of it into a resource.
const compiled = new Map();
let asked = { response: undefined, results: new Map() };
fhirpath.evaluate = (data, expression, variables, model, options) => {
  const evaluated = () => {
    const known = compiled.get(expression) ?? fhirpath.compile(expression, model, options);
    compiled.set(expression, known);
    return known(data, variables);
  };
  if (data?.resourceType !== 'QuestionnaireResponse') return evaluated();
  if (data !== asked.response) asked = { response: data, results: new Map() };
  const result = asked.results.get(expression) ?? evaluated();
  asked.results.set(expression, result);
  return result;
};

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
