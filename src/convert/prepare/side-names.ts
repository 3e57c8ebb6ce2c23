import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { issue } from '../issue.ts';
import type { Target } from '../mapping/target.ts';

/** Parts of names that tell a side (common practice, no source). */
const tokens: ReadonlyMap<string, 'right' | 'left'> = new Map([
  ['r', 'right'],
  ['rt', 'right'],
  ['right', 'right'],
  ['l', 'left'],
  ['lt', 'left'],
  ['left', 'left'],
]);

/** A field called `MRD1_L` that the mapping puts on the right: meant so, or a slip with a patient's side. */
export function sideNameIssues(name: string, target: Target, path: Path): Issue[] {
  const side = 'side' in target ? target.side : undefined;
  if (side !== 'right' && side !== 'left') return [];
  const named = name
    .split(/[^A-Za-z]+/)
    .map((part) => tokens.get(part.toLowerCase()))
    .filter((part) => part !== undefined);
  if (named.length === 0 || named.includes(side)) return [];
  return [issue('side-conflict', [...path, 'side'], { reason: 'name' }, { severity: 'warning' })];
}
