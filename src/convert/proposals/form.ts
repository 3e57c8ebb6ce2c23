import type { Issue } from '../../issues/issue.ts';
import type { Path } from '../../issues/path.ts';
import { namesFinding } from '../../kinds/finding/convert.ts';
import { issue } from '../issue.ts';
import type { Proposal, ProposalPart } from './proposal.ts';

const parts: readonly ProposalPart[] = ['finding', 'region', 'presence'];

/** What a confirmed proposal from outside must have; the codes of its statement the exam checks. */
export function proposalIssues(value: Proposal, path: Path): Issue[] {
  const {
    statement,
    confirmed,
    rejected,
  }: { [Part in 'statement' | 'confirmed' | 'rejected']?: unknown } = value;
  const places = [value.start, value.end].every((place) => Number.isInteger(place));
  const isWhole = places && typeof value.text === 'string' && typeof value.note === 'string';
  if (!isWhole || !isObject(statement) || !namesFinding(statement)) {
    return [issue('malformed-record', path, { reason: 'proposal' })];
  }
  if (rejected !== undefined) {
    return [issue('contradiction', [...path, 'rejected'], { reason: 'rejected' })];
  }
  const open = parts.filter((part) => statement[part] === undefined);
  const names = isObject(confirmed) ? [confirmed.by, confirmed.at] : [];
  const isSigned =
    names.length === 2 && names.every((one) => typeof one === 'string' && one !== '');
  return [
    ...open.map((part) =>
      issue('missing-property', [...path, 'statement', part], { reason: 'proposal' }),
    ),
    ...(isSigned
      ? []
      : [issue('missing-property', [...path, 'confirmed'], { reason: 'confirmed' })]),
  ];
}

type Named = { readonly [Name in 'kind' | 'by' | 'at' | ProposalPart]?: unknown };

function isObject(value: unknown): value is Named {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
