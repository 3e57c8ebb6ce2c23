/** Signs that are felt; a look that finds nothing does not deny them. */
const felt: ReadonlySet<string> = new Set([
  'tender',
  'skin-tender',
  'thy-tender',
  'eac-tender',
  'lump-felt',
  'subcutaneous-nodule',
  'emphysema-skin',
  'artery-thickened',
  'artery-nodular',
  'artery-pulse.reduced',
  'artery-pulse.absent',
  'parotid-mass',
  'submandibular-mass',
  'neck-mass',
  'node-enlarged',
  'node-palpable',
  'thyroid-mass',
  'thy-surface.single-nodule',
  'thy-surface.multinodular',
]);
const touch = ['palpation', 'bimanual-palpation'];
const looking = ['inspection', 'inspection-magnified', 'otoscopy', 'anterior-rhinoscopy'];
/** Signs of a test of the pupil, which looking alone does not deny. */
const byReflex = /^(pupil-light|afferent)/;
/** Signs that nothing but a statement of their own denies. */
const byTest = /^(lid-fatigue|airflow|voice|speech|stridor|swallow)/;

/** The methods by which a region that is normal denies a sign (common practice, no source). */
export function methodsFor(finding: string): readonly string[] {
  if (felt.has(finding)) return touch;
  if (byReflex.test(finding)) return ['reflex'];
  return byTest.test(finding) ? [] : looking;
}
