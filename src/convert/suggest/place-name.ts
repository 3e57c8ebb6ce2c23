import type { Side } from '../../model/primitive.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { TestPoint } from '../../terminology/types.ts';
import type { Target } from '../mapping/target.ts';
import { type NameParts, nameParts } from './name-parts.ts';

/** Makes the target of a name; words are filled in later. */
type Maker = (parts: NameParts) => Target;

/** Looks up what a name is about, by the codes and displays of the catalogue. */
export type NameIndex = ReadonlyMap<string, Maker>;

/**
 * Targets by name. Only a name that is a code or display of the catalogue is placed; a name that could
 * be two things is taken for the first of measure, test, scale, finding, region and symptom.
 */
export function nameIndex(catalogue: Catalogue): NameIndex {
  const index = new Map<string, Maker>();
  const add = (row: { readonly code: string; readonly display: string }, maker: Maker): void => {
    for (const name of [row.code, row.display]) {
      const { about } = nameParts(name);
      if (about !== '' && !index.has(about)) index.set(about, maker);
    }
  };
  for (const row of catalogue.measures.values()) {
    if (row.rangeOf !== undefined || row.scale !== undefined) continue;
    add(row, ({ side }) => ({ kind: 'measurement', measure: row.code, ...sided(side) }));
  }
  for (const row of catalogue.testPoints.values()) {
    add(row, (parts) => pointTargets[row.group](row.code, parts));
  }
  for (const row of catalogue.scales.values()) {
    const [version = ''] = row.versions;
    add(row, ({ side }) => ({ kind: 'scale-score', scale: row.code, version, ...sided(side) }));
  }
  for (const row of catalogue.findings.values()) {
    const [region] = row.regions;
    // A sign that can be anywhere, or in several places, needs its region from a person.
    const place = row.regions.length === 1 && region !== undefined ? { region } : {};
    add(row, ({ side }) => ({
      kind: 'finding',
      finding: row.code,
      ...place,
      ...sided(side),
      words: {},
    }));
  }
  for (const row of catalogue.regions.values()) {
    add(row, ({ side }) => ({ kind: 'region-state', region: row.code, ...sided(side), words: {} }));
  }
  for (const row of catalogue.symptoms.values()) {
    add(row, ({ side }) => ({ kind: 'symptom', symptom: row.code, ...sided(side), words: {} }));
  }
  for (const name of ['remark', 'remarks', 'note', 'notes', 'comment', 'comments', 'freetext']) {
    if (!index.has(name)) index.set(name, () => ({ kind: 'note' }));
  }
  return index;
}

/** Most names that are offered for one that has no place. */
const MOST_OFFERS = 4;

/** Codes and displays that begin with what a name is about, for a person to choose from. */
export function nearNames(name: string, catalogue: Catalogue): readonly string[] {
  const { about } = nameParts(name);
  if (about.length < 3) return [];
  const rows = [
    ...catalogue.measures.values(),
    ...catalogue.testPoints.values(),
    ...catalogue.findings.values(),
    ...catalogue.regions.values(),
  ];
  const near = rows.filter(({ code }) => nameParts(code).about.startsWith(about));
  return near.slice(0, MOST_OFFERS).map(({ code }) => code);
}

/** The target that a name stands for, if the catalogue has it. */
export function placeName(name: string, index: NameIndex): Target | undefined {
  const parts = nameParts(name);
  return index.get(parts.about)?.(parts);
}

function sided(side: Side | undefined): { readonly side?: Side } {
  return side === undefined ? {} : { side };
}

const movement = (test: string, { side }: NameParts): Target => ({
  kind: 'movement',
  test,
  ...sided(side),
  words: {},
});

const pointTargets: {
  readonly [G in TestPoint['group']]: (code: string, parts: NameParts) => Target;
} = {
  sensation: (point, { side, modality }) => ({
    kind: 'sensation',
    point,
    ...sided(side),
    ...(modality !== undefined && { modality }),
    words: {},
  }),
  'facial-movement': movement,
  movement,
  function: (test, { side }) => ({ kind: 'function-test', test, ...sided(side), words: {} }),
};
