import type { Measurement } from '../../model/statement.ts';
import { ownCode } from '../concept.ts';
import { innerOf } from '../element.ts';
import { aboutOf, claimCommon, methodsOf, type Observed } from '../observation.ts';
import { absentReasonOf } from '../reason.ts';
import { siteOf } from '../site.ts';
import { codingsOf, filled, quantityOf } from '../values.ts';
import type { Read } from './read.ts';

const conventions = ['single', 'mean', 'median', 'maximum', 'minimum', 'last'] as const;

export function readMeasurement(
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
  const unit = stated?.unit ?? read[0]?.unit ?? components.text('unit');
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
