import type { Observation } from 'fhir/r4.js';
import { toBundle } from '../../src/index.ts';
import { sampleExam } from '../../src/testing/index.ts';

/** The observations of one exam as a clinic files them: our codes, its own ids. */
function filed(identity: string) {
  const { value } = toBundle(sampleExam(4), { identity, profiles: true });
  const resources = (value?.entry ?? []).map(({ resource }) => resource);
  const observations = resources.filter((one) => one?.resourceType === 'Observation');
  return {
    codes: JSON.stringify(observations.map((one) => (one as Observation).code)),
    ids: JSON.stringify(observations.map((one) => one?.id)),
  };
}

const harbour = filed('https://harbour.example/records');
const vineyard = filed('https://vineyard.example/records');
console.log(harbour.codes === vineyard.codes, harbour.ids === vineyard.ids);
