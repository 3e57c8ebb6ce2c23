import { clinic } from '../issues/english/clinic.ts';
import { issuesOf } from '../issues/issue.ts';

/** Issues about a clinic file. Severity: `error` unless told. */
export const issue = /*@__PURE__*/ issuesOf(clinic);
