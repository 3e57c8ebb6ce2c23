import type { Issue } from '../../issues/issue.ts';
import { issue } from '../issue.ts';
import { xmlLimits } from './limits.ts';
import type { LinePlace } from './place.ts';

/** Why a unit cannot be read. */
export type XmlFault =
  | 'not-well-formed'
  | 'forbidden-doctype'
  | 'too-deep'
  | 'too-large'
  | 'stray-text';

/** The same as an issue, at its place. */
export function faultIssue(fault: XmlFault, source: LinePlace): Issue {
  switch (fault) {
    case 'not-well-formed':
    case 'forbidden-doctype':
    case 'stray-text':
      return issue(fault, [], { reason: 'exam' }, { source });
    case 'too-deep':
      return issue(fault, [], { reason: 'exam', maximum: xmlLimits.depth }, { source });
    case 'too-large':
      return issue(fault, [], { reason: 'exam-element' }, { source });
  }
}
