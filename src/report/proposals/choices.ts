import { unkeyedFinding } from '../../kinds/finding/convert.ts';
import type { Exam } from '../../model/exam.ts';
import { isWithin } from '../../model/rules/places.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { Language } from '../../terminology/languages/language.ts';
import { lateralitySides } from '../../terminology/sides.ts';

type Labelled = readonly [code: string, label: string];

/** What a person can choose, for the script of the page. */
export interface FindingChoices {
  /** Signs in the order of their labels, each with the index of its list of places. */
  readonly findings: readonly (readonly [code: string, label: string, places: number])[];
  /** Lists of regions in which signs can be, each once. */
  readonly places: readonly (readonly string[])[];
  readonly regions: {
    readonly [code: string]: {
      readonly label: string;
      readonly sides: readonly string[];
      readonly required: boolean;
    };
  };
  /** Region or group above each region. */
  readonly parents: { readonly [code: string]: string };
  readonly sides: readonly Labelled[];
}

/** Every sign of a catalogue with the places and sides that it can have; its displays are the labels. */
export function findingChoices(catalogue: Catalogue, { tag, sides }: Language): FindingChoices {
  const order = new Intl.Collator(tag);
  const byLabel = <Row extends { readonly display: string }>(rows: Iterable<Row>): Row[] =>
    [...rows].sort((one, other) => order.compare(one.display, other.display));
  const single = byLabel(catalogue.regions.values()).filter(({ group }) => group !== true);
  const places: (readonly string[])[] = [];
  const known = new Map<string, number>();
  const placesOf = (regions: readonly string[]): number => {
    const key = regions.join(' ');
    const index =
      known.get(key) ??
      places.push(
        single
          .map(({ code }) => code)
          .filter(
            (code) => regions.length === 0 || regions.some((one) => isWithin(code, one, catalogue)),
          ),
      ) - 1;
    known.set(key, index);
    return index;
  };
  return {
    findings: byLabel(catalogue.findings.values()).map(({ code, display, regions }) => [
      code,
      display,
      placesOf(regions),
    ]),
    places,
    regions: Object.fromEntries(
      single.map(({ code, display, laterality }) => [
        code,
        { label: display, ...lateralitySides[laterality] },
      ]),
    ),
    parents: Object.fromEntries(
      [...catalogue.regions.values()].flatMap(({ code, parent }) =>
        parent === undefined ? [] : [[code, parent]],
      ),
    ),
    sides: Object.entries(sides),
  };
}

/** What an exam says of signs already, as far as a confirmed proposal could say the opposite. */
export function saidOf({ statements }: Exam): readonly object[] {
  return statements.flatMap((one) => {
    const statement = unkeyedFinding(one);
    // What another examiner, a spot, a doubt or an exception sets apart is no opposite.
    const apart = ['examiner', 'place', 'tracking', 'certainty', 'except'].some(
      (part) => part in one,
    );
    if (statement === undefined || apart) return [];
    const { finding, region, side, presence } = statement;
    return [{ finding, region, side, presence }];
  });
}
