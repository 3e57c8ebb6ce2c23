import { partName } from './part-names.ts';

/** Stable names of the resources of an exam; their ids derive from these. */
export const resourceName = {
  report: 'report',
  composition: 'composition',
  filed: 'filed',
  bundle: (type: string): string => `bundle/${type}`,
  patient: 'patient',
  organization: 'organization',
  encounter: 'encounter',
  statement: (key: string): string => `statement/${key}`,
  media: (key: string): string => `media/${key}`,
  group: (section: string): string => `group/${section}`,
  item: (item: string, at: number): string => `item/${item}/${at}`,
  practitioner: (key: string): string => `practitioner/${key}`,
  role: (key: string): string => `role/${key}`,
  device: (key: string): string => `device/${key}`,
  used: (key: string): string => `used/${key}`,
  prompt: (at: number): string => `prompt/${at}`,
  plan: (key: string): string => `plan/${key}`,
  bodyStructure: (place: string): string => `place/${place}`,
  event: (version: number): string => `event/${version}`,
} as const;

/** Name of the observation of a part, by the name under which the exam identifies it. */
export function observationName(part: string): string {
  if (!part.includes('|')) return resourceName.statement(part);
  const [kind = '', rest = ''] = [
    part.slice(0, part.indexOf('|')),
    part.slice(part.indexOf('|') + 1),
  ];
  if (part === partName.group(rest)) return resourceName.group(rest);
  if (part === partName.used(rest)) return resourceName.used(rest);
  return resourceName.item(kind, Number(rest));
}
