import type {
  Encounter,
  Examiner,
  HumanName,
  Instrument,
  Organization,
  Subject,
} from '../../model/people.ts';
import type { Identifier } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Random } from '../random.ts';
import { type SampleSize, sampleDecimal, sampleText } from './sampling.ts';
import { familyNames, givenNames, roles, workplaces } from './words.ts';

interface Draw {
  readonly random: Random;
  readonly size: SampleSize;
}

export function sampleSubject({ random, size }: Draw): Subject {
  if (random.chance(0.15)) return { reference: `Patient/worker-${random.int(1, 99999)}` };
  const year = random.int(1948, 2006);
  const date = `${year}-0${random.int(1, 9)}-${random.int(10, 28)}`;
  return {
    identifiers: sampleIdentifiers(random, 'workers'),
    ...(random.chance(0.9) && { name: sampleName(random) }),
    ...(random.chance(0.9) && {
      birthDate: size === 'edge' ? random.pick([date, date.slice(0, 7), `${year}`]) : date,
    }),
    ...(random.chance(0.8) && {
      gender: random.pick(['male', 'female', 'other', 'unknown'] as const),
    }),
  };
}

export function sampleExaminers({ random, size }: Draw): [Examiner, ...Examiner[]] {
  const count = size === 'edge' ? random.int(1, 4) : random.int(1, 2);
  const others = Array.from({ length: count - 1 }, (_, at) =>
    examiner(random, `examiner-${at + 2}`),
  );
  return [examiner(random, 'examiner-1'), ...others];
}

function examiner(random: Random, key: string): Examiner {
  const role = random.chance(0.6) ? { role: random.pick(roles) } : {};
  if (random.chance(0.2)) {
    return { key, reference: `Practitioner/staff-${random.int(1, 999)}-${key}`, ...role };
  }
  return {
    key,
    ...(random.chance(0.5) && { identifiers: sampleIdentifiers(random, 'staff') }),
    ...(random.chance(0.9) && { name: sampleName(random) }),
    ...role,
  };
}

export function sampleOrganization({ random }: Draw): Organization {
  if (random.chance(0.2)) return { reference: `Organization/site-${random.int(1, 40)}` };
  return {
    ...(random.chance(0.5) && { identifiers: sampleIdentifiers(random, 'sites') }),
    name: random.pick(workplaces),
  };
}

export function sampleEncounter({ random }: Draw): Encounter {
  if (random.chance(0.3)) return { reference: `Encounter/visit-${random.int(1, 9999)}` };
  const kinds = ['ambulatory', 'virtual', 'home', 'field', 'emergency', 'inpatient'] as const;
  return {
    ...(random.chance(0.7) && { identifiers: sampleIdentifiers(random, 'visits') }),
    ...(random.chance(0.8) && { class: random.pick(kinds) }),
  };
}

export function sampleInstruments(draw: Draw & { readonly catalogue: Catalogue }): Instrument[] {
  const { random, size, catalogue } = draw;
  const types = random.some(
    [...catalogue.instruments.keys()],
    random.int(1, size === 'small' ? 2 : 6),
  );
  return types.map((type, at) => ({
    key: `instrument-${at + 1}`,
    type,
    ...(random.chance(0.15) && { reference: `Device/inventory-${random.int(1, 500)}-${at}` }),
    ...(random.chance(0.3) && { magnification: sampleDecimal(random, 1, 40, random.int(0, 2)) }),
    ...(random.chance(0.3) && {
      resolution: { value: random.pick(['0.5', '1', '1.0']), unit: 'mm' },
    }),
    ...(random.chance(0.3) && { detail: sampleText(draw) }),
    ...(random.chance(0.3) && { serial: `SN ${random.int(1000, 9999)}/${at}` }),
  }));
}

function sampleName(random: Random): HumanName {
  const given = random.some(givenNames, random.int(1, 2));
  const family = random.pick(familyNames);
  if (random.chance(0.1)) return { text: `${given.join(' ')} ${family}` };
  return {
    family,
    given,
    ...(random.chance(0.2) && { prefix: 'Dr' }),
    ...(random.chance(0.2) && { text: `${family}, ${given.join(' ')}` }),
  };
}

function sampleIdentifiers(random: Random, kind: string): [Identifier, ...Identifier[]] {
  const one = (at: number): Identifier => ({
    system: `https://clinic.example/${kind}${at === 0 ? '' : `/${at}`}`,
    value: `${kind.slice(0, 1).toUpperCase()}-${random.int(100000, 999999)}`,
    ...(random.chance(0.3) && {
      use: random.pick(['usual', 'official', 'secondary', 'old'] as const),
    }),
  });
  return random.chance(0.2) ? [one(0), one(1)] : [one(0)];
}
