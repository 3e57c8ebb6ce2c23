import { innerOf } from '../../read/bundle/element.ts';
import { ownCode } from '../../read/observation/concept.ts';
import type { Read, Reader } from '../../read/observation/observation.ts';
import {
  aboutOf,
  claimCommon,
  methodsOf,
  type Observed,
} from '../../read/observation/observation.ts';
import { absentReasonOf } from '../../read/observation/reason.ts';
import { siteOf } from '../../read/observation/site.ts';
import { codingsOf, filled, quantityOf } from '../../read/observation/values.ts';
import type { Measurement } from './statement.ts';

export const measurementReader: Reader<Measurement> = {
  of: ({ table }) => table === 'measures',
  read: readMeasurement,
};

const conventions = ['single', 'mean', 'median', 'maximum', 'minimum', 'last'] as const;

function readMeasurement(
  observed: Observed,
  key: string | undefined,
): Read<Measurement> | undefined {
  const { reading, element, components } = observed;
  const code = ownCode(reading, innerOf(element, 'code'), 'measures');
  const site = siteOf(observed);
  if (code === undefined || site === undefined) return undefined;
  claimCommon(observed, key, { category: 'exam' });

  const stated = quantityOf(innerOf(element, 'valueQuantity'));
  const read = components
    .all('reading')
    .flatMap((component) => quantityOf(innerOf(component, 'valueQuantity')) ?? []);
  const unit = stated?.unit ?? components.text('unit') ?? read[0]?.unit;
  // A reading in another unit than the value would change its meaning.
  if (unit === undefined || read.some((one) => one.unit !== unit)) return undefined;
  const readings = filled(read.map(({ value }) => value));
  const absent = absentReasonOf(reading, innerOf(element, 'dataAbsentReason'));
  const convention = components.value('convention');
  const known = conventions.find((one) => one === convention);
  const conditions = filled(components.codes('measure-condition', 'measureConditions'));
  const methods = methodsOf(observed);
  const place = components.text('place');
  const [about] = aboutOf(observed) ?? [];
  const estimated = components.flag('estimated');
  const codings = filled(codingsOf(code.further));
  return {
    kind: 'measurement',
    measure: code.code,
    ...site,
    ...(place !== undefined && { place }),
    ...(methods && { methods }),
    ...stated,
    unit,
    ...(readings && { readings }),
    ...(known !== undefined && { convention: known }),
    ...(conditions && { conditions }),
    ...(absent && { unusable: absent.reason }),
    ...(about !== undefined && { about }),
    ...(estimated !== undefined && { estimated }),
    ...(codings && { codings }),
  };
}
