import { flagOf, innerOf, wholeOf } from '../../read/bundle/element.ts';
import type { Component } from '../../read/observation/components.ts';
import { innerValue, ownCode, ownValue } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import { claimCommon, methodsOf, type Observed } from '../../read/observation/observation.ts';
import { exceptionsOf, siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled, identifierOf, quantityOf } from '../../read/observation/values.ts';
import type { Attribute, Finding } from './statement.ts';

export const findingReader: Reader<Finding> = {
  of: ({ table }) => table === 'findings',
  read: readFinding,
};

const presences = ['present', 'absent', 'indeterminate'] as const;

function readFinding(observed: Observed, key: string | undefined): Read<Finding> | undefined {
  const { reading, element, components } = observed;
  const answer = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'presence');
  const suspected = answer === 'suspected';
  const presence = suspected ? 'present' : presences.find((known) => known === answer);
  const code = ownCode(reading, innerOf(element, 'code'), 'findings', {
    strict: suspected || presence !== 'present',
  });
  const except = exceptionsOf(observed);
  const site = siteOf(observed, except);
  if (presence === undefined || code === undefined || site === undefined) return undefined;
  // Exceptions that cannot be kept are never dropped: the statement would say more than it does.
  if (except === undefined || (except.length > 0 && presence !== 'absent')) return undefined;
  const methods = methodsOf(observed);
  const place = components.text('place');
  const confirmed = components.value('certainty') === 'confirmed';
  const attributes = filled(
    components.ofTable('attributes').flatMap((one) => attributeOf(observed, one) ?? []),
  );
  const tracking = trackingOf(observed, key);
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'finding',
    finding: code.code,
    presence,
    ...site,
    ...(place !== undefined && { place }),
    ...(methods && { methods }),
    ...(except.length > 0 && { except }),
    ...(suspected && { certainty: 'suspected' }),
    ...(confirmed && !suspected && { certainty: 'confirmed' }),
    ...(attributes && { attributes }),
    ...(tracking !== undefined && { tracking }),
    ...(codings && { codings }),
  };
}

function attributeOf({ reading }: Observed, { code, element }: Component): Attribute | undefined {
  const row = reading.catalogue.attributes.get(code);
  const inner = innerValue(reading, innerOf(element, 'valueCodeableConcept'), {
    table: 'attributes',
    code,
    values: row?.values,
  });
  const value =
    inner?.code ??
    flagOf(element, 'valueBoolean') ??
    wholeOf(element, 'valueInteger') ??
    quantityOf(innerOf(element, 'valueQuantity'));
  return value === undefined ? undefined : { attribute: code, value };
}

/** Claims the frame of the observation, and in it the identity of the lesion over exams. */
function trackingOf(observed: Observed, key: string | undefined): string | undefined {
  const { tracking } = observed.reading.systems;
  const [found] = claimCommon(observed, key, { category: 'exam' }).flatMap((identifier) => {
    const { claims } = identifier;
    return (
      claims.attempt(() => {
        const { system, value } = identifierOf(identifier) ?? {};
        return system === tracking ? value : undefined;
      }) ?? []
    );
  });
  return found;
}
