import type { Side } from '../../model/primitive.ts';

/** A name taken apart: what it is about, and the side and modality that it tells. */
export interface NameParts {
  /** Small letters and digits only. */
  readonly about: string;
  readonly side?: Side;
  readonly modality?: string;
}

/** Common practice, no source. */
const sides: ReadonlyMap<string, Side> = new Map([
  ['r', 'right'],
  ['rt', 'right'],
  ['right', 'right'],
  ['l', 'left'],
  ['lt', 'left'],
  ['left', 'left'],
  ['bl', 'both'],
  ['both', 'both'],
  ['bilateral', 'both'],
]);

/** Common practice, no source. */
const modalities: ReadonlyMap<string, string> = new Map([
  ['soft', 'light-touch'],
  ['touch', 'light-touch'],
  ['cotton', 'light-touch'],
  ['sharp', 'pinprick'],
  ['pin', 'pinprick'],
  ['pinprick', 'pinprick'],
]);

export function nameParts(name: string): NameParts {
  const tokens = name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((token) => token !== '');
  const isAbout = (token: string): boolean => !sides.has(token) && !modalities.has(token);
  const found = new Set(
    tokens.map((token) => sides.get(token)).filter((side) => side !== undefined),
  );
  const modality = tokens.map((token) => modalities.get(token)).find((code) => code !== undefined);
  // Two sides in one name tell none.
  const [side] = found.size === 1 ? found : [];
  return {
    about: tokens.filter(isAbout).join(''),
    ...(side !== undefined && { side }),
    ...(modality !== undefined && { modality }),
  };
}
