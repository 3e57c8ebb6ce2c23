import type { Path } from '../../issues/path.ts';
import { choiceElements, plainElements } from '../tables/choices.ts';

/**
 * A path in JSON as FHIRPath relative to the resource: `_status` is `status`, `valueQuantity` is
 * `value.ofType(Quantity)`.
 * @see https://hl7.org/fhir/R4/fhirpath.html#simple
 */
export function fhirPathText(path: Path): string {
  let text = '';
  let holder = '';
  for (const step of path) {
    if (typeof step === 'number') {
      text += `[${step}]`;
    } else {
      text += `${text === '' ? '' : '.'}${elementText(step, holder)}`;
      holder = step;
    }
  }
  return text;
}

function elementText(step: string, holder: string): string {
  const name = step.replace(/^_/, '');
  const choice = choiceOf(name, holder);
  if (choice !== undefined) return choice;
  return /^[A-Za-z][A-Za-z0-9_]*$/.test(name) ? name : delimited(name);
}

function choiceOf(name: string, holder: string): string | undefined {
  if (plainElements.includes(name) || plainElements.includes(`${holder}.${name}`)) return undefined;
  for (const [base, types] of Object.entries(choiceElements)) {
    const suffix = name.startsWith(base) ? name.slice(base.length) : '';
    const type = types.find((each) => each[0]?.toUpperCase() + each.slice(1) === suffix);
    if (type !== undefined) return `${base}.ofType(${type})`;
  }
  return undefined;
}

/** @see https://hl7.org/fhirpath/N1/#identifiers */
function delimited(name: string): string {
  return `\`${name.replace(/[\\`]/g, '\\$&')}\``;
}
