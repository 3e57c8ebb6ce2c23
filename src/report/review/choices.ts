import type { Target } from '../../convert/mapping/target.ts';
import { lateralityOf, unitsOf } from '../../convert/suggest/names/side-and-unit.ts';
import type { HeadUse } from '../../convert/suggest/names/use-words.ts';
import { makeTarget } from '../../convert/suggest/targets.ts';
import { entriesOf } from '../../find/phrases.ts';
import { targetConversion } from '../../kinds/registries/conversions.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import { lateralitySides } from '../../terminology/sides.ts';

/** What a field can be taken for, with what must be said beside it. */
export interface Choice {
  readonly target?: Target;
  readonly head?: HeadUse;
  readonly sides: readonly string[];
  readonly sideRequired: boolean;
  readonly units: readonly string[];
  readonly regionRequired: boolean;
  /** Index of the list of meanings that its words can have; none for what has no words. */
  readonly meanings?: number;
}

/** Lists of meanings, each once: most signs have the same. */
export interface MeaningLists {
  readonly lists: readonly (readonly string[])[];
  readonly indexOf: (meanings: readonly string[]) => number;
}

export function meaningLists(): MeaningLists {
  const lists: (readonly string[])[] = [];
  const known = new Map<string, number>();
  return {
    lists,
    indexOf: (meanings) => {
      const key = meanings.join('|');
      const index = known.get(key) ?? lists.push(meanings) - 1;
      known.set(key, index);
      return index;
    },
  };
}

/** What has to be said of a target before it can be used. */
export function choiceOf(target: Target, catalogue: Catalogue, meanings: MeaningLists): Choice {
  const laterality = lateralityOf(target, catalogue);
  const { sides, required } =
    laterality === undefined
      ? { sides: lateralitySides.whole.sides, required: false }
      : lateralitySides[laterality];
  const conversion = targetConversion(target);
  const words = 'words' in target ? conversion.meanings(target, catalogue) : undefined;
  return {
    target,
    sides,
    sideRequired: required,
    units: unitsOf(target, catalogue).filter((unit) => unit !== '1'),
    regionRequired: conversion.needs === 'region' && !('region' in target),
    ...(words !== undefined && {
      meanings: meanings.indexOf([...words, 'not-stated', 'text']),
    }),
  };
}

/** A row of the list that a field can be changed to. */
export interface NamedChoice {
  /** `sign/keloid`, `exam/subject`. */
  readonly key: string;
  readonly label: string;
  readonly choice: Choice;
}

const heads: { readonly [Use in HeadUse]: string } = {
  exam: 'Number of the exam',
  status: 'Status of the exam',
  subject: 'Number of the person',
  family: 'Family name',
  given: 'Given name',
  born: 'Date of birth',
  gender: 'Sex',
  performed: 'When the exam was done',
  recorded: 'When the record was written',
  examiner: 'Who examined',
};

const nothingAsked = { sides: [], sideRequired: false, units: [], regionRequired: false } as const;

/** Everything that a field can be, by key. */
export function allChoices(catalogue: Catalogue, meanings: MeaningLists): readonly NamedChoice[] {
  const ofHead = Object.entries(heads).map(([head, label]) => ({
    key: `exam/${head}`,
    label,
    choice: { head: head as HeadUse, ...nothingAsked }, // keys of the record above
  }));
  const rows = entriesOf(catalogue).flatMap(({ kind, code, display, german }): NamedChoice[] => {
    const target = makeTarget(kind, code, catalogue);
    if (target === undefined) return [];
    return [
      {
        key: `${kind}/${code}`,
        label: german === undefined ? display : `${display}, ${german}`,
        choice: choiceOf(target, catalogue, meanings),
      },
    ];
  });
  const note: Target = { kind: 'note' };
  return [
    ...ofHead,
    { key: 'note', label: 'Note', choice: choiceOf(note, catalogue, meanings) },
    ...rows,
  ];
}
