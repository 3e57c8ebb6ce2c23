import type { Finding } from '../../model/statement.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';

/** A sign that is not a usual appearance: present and not usual, or usual and stated as absent. */
export function isAbnormal(finding: Finding, catalogue: Catalogue): boolean {
  const usual = catalogue.findings.get(finding.finding)?.usual === true;
  return finding.presence === (usual ? 'absent' : 'present');
}

/** Methods of two statements; one that says none may have used any. */
export function methodsMeet(
  a: readonly string[] | undefined,
  b: readonly string[] | undefined,
): boolean {
  return a === undefined || b === undefined || a.some((method) => b.includes(method));
}

/** Value of a coded attribute; undefined where it is not stated. */
export function codedAttribute(finding: Finding, attribute: string): string | undefined {
  const value = finding.attributes?.find((one) => one.attribute === attribute)?.value;
  return typeof value === 'string' ? value : undefined;
}
