import type { Mapping } from '../../convert/mapping/mapping.ts';
import { concerns } from '../../model/conclusion.ts';
import type { Code, Side } from '../../model/primitive.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { sideText } from '../../terminology/sides.ts';
import { units } from '../../terminology/tables/units.ts';
import type { FieldNames } from './format.ts';
import { numberSystems, PATIENT_PREFIX } from './head.ts';
import { itemTargets, same, sharedWords } from './item-targets.ts';

/** Exams that were read by one of these mappings have this before their id. */
export const ID_PREFIX = 'sample';

/** A mapping has one protocol for a whole export. */
export const LEGACY_PROTOCOL = { id: 'full', version: '1.0.0' } as const;

/** The name given where an export does not name who examined. */
export const UNNAMED_EXAMINER = 'Not named';

const statuses = [
  'draft',
  'preliminary',
  'final',
  'amended',
  'corrected',
  'appended',
  'cancelled',
  'entered-in-error',
] as const;

/** The mapping that reads an invented export whose fields have these names. */
export function legacyMapping({ source, head, item, layout, dateForms }: FieldNames): Mapping {
  const catalogue = builtInCatalogue;
  const { code, ...others } = item;
  return {
    format: 'face-neck-mapping/1',
    title: 'Invented yearly checks of vineyard and harbour workers',
    source,
    exam: {
      id: { prefix: ID_PREFIX, from: [head.id] },
      status: { from: head.status, words: words(statuses) },
      subject: {
        identifiers: identifiers(head),
        reference: { from: head.patient, prefix: PATIENT_PREFIX },
        family: head.family,
        given: head.given,
        ...(head.name !== undefined && { name: head.name }),
        birthDate: head.born,
        gender: { from: head.sex, words: head.sexWords },
      },
      performed: { start: head.start, end: head.end },
      recorded: { from: head.recorded },
      examiner: {
        identifier: { from: head.examinerNumber, system: numberSystems.examiner },
        name: head.examiner,
        fixed: { name: UNNAMED_EXAMINER },
      },
      protocol: LEGACY_PROTOCOL,
      indication: head.indication,
      conclusion: {
        text: head.conclusion,
        concern: { from: head.concern, words: words(concerns) },
      },
    },
    items: [{ ...others, code: [code], map: itemTargets(catalogue) }],
    words: sharedWords(catalogue),
    sides: words(Object.keys(sideText) as Side[]), // the keys of the table of all sides
    methods: same(catalogue.methods.keys()),
    measureConditions: same(catalogue.measureConditions.keys()),
    regions: same(catalogue.regions.keys()),
    units: same(units.map((unit): Code => unit.code)),
    ...(dateForms !== undefined && { dates: { formats: [...dateForms] } }),
    layout: [...layout],
  };
}

function identifiers(
  head: FieldNames['head'],
): NonNullable<Mapping['exam']['subject']['identifiers']> {
  const { worker, otherNumber, numberKind } = head;
  const where = (is: string): { where?: { field: string; is: string } } =>
    numberKind === undefined ? {} : { where: { field: numberKind.field, is } };
  return [
    { from: worker, system: numberSystems.worker, ...where(numberKind?.worker ?? '') },
    ...(otherNumber === undefined
      ? []
      : [{ from: otherNumber, system: numberSystems.other, ...where(numberKind?.other ?? '') }]),
  ];
}

/** Words that say what they mean. */
function words<Word extends string>(all: readonly Word[]): { readonly [word: string]: Word } {
  return Object.fromEntries(all.map((word) => [word, word]));
}
