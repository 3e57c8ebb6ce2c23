import type { Issue } from '../../issues/issue.ts';
import { cdaMappingIssues, completeCda } from '../cda/complete.ts';
import { columnIssues } from '../fixed/reader.ts';
import { completeHl7v2, hl7v2MappingIssues } from '../hl7v2/complete.ts';
import type { Mapping } from './mapping.ts';

/** The mapping with what the standard of its syntax says, where the mapping says nothing itself. */
export function completeMapping(mapping: Mapping): Mapping {
  switch (mapping.source.syntax) {
    case 'hl7v2':
      return completeHl7v2(mapping);
    case 'cda':
      return completeCda(mapping);
    default:
      return mapping;
  }
}

/** What a mapping says against the standard of its syntax. */
export function syntaxIssues(mapping: Mapping): Issue[] {
  switch (mapping.source.syntax) {
    case 'hl7v2':
      return hl7v2MappingIssues(mapping);
    case 'cda':
      return cdaMappingIssues(mapping);
    case 'fixed':
      return columnIssues(mapping.source);
    default:
      return [];
  }
}
