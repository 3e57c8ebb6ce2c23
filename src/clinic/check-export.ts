import { optionIssues } from '../export/option-issues.ts';
import type { ExportOptions } from '../export/options.ts';
import { optionClashes } from '../export/unfitting.ts';
import { snomedPolicyIssues } from '../fhir/licence/snomed-policy.ts';
import { type Issue, issuesBelow } from '../issues/issue.ts';
import { standardSystem } from '../terminology/system-names.ts';
import type { ClinicFile } from './clinic-file.ts';
import { issue } from './issue.ts';
import { decided } from './undecided.ts';

/** What stands below `export`, as options. */
export function exportPart({ export: given = {} }: ClinicFile): Omit<ExportOptions, 'catalogue'> {
  const { bundleType, ...rest } = given;
  const type = decided(bundleType);
  return { ...rest, ...(type !== undefined && { bundleType: type }) };
}

/** What an export would refuse, and what has no effect. */
export function exportIssues(file: ClinicFile): readonly Issue[] {
  const identity = decided(file.identity);
  const snomed = decided(file.snomed);
  const { canonicalBase } = file;
  const part = exportPart(file);
  return [
    ...optionIssues({
      ...(identity !== undefined && { identity }),
      ...(canonicalBase !== undefined && { canonicalBase }),
    }),
    ...(snomed === undefined ? [] : snomedPolicyIssues(snomed)),
    ...issuesBelow(['export'], [...optionIssues(part), ...optionClashes(part)]),
    ...(snomed === 'none' ? mappedInVain(file) : []),
  ];
}

function mappedInVain({ codeMap = [] }: ClinicFile): readonly Issue[] {
  return codeMap.flatMap(({ system, target }, at) => {
    if (target === undefined || standardSystem(system) !== 'snomed') return [];
    const path = ['codeMap', at, 'system'];
    const severity = 'warning';
    return [issue('contradiction', path, { reason: 'map-without-snomed' }, { severity })];
  });
}
