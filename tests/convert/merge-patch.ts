/**
 * The target with the patch applied.
 * @see https://www.rfc-editor.org/rfc/rfc7396 section 2
 */
// biome-ignore lint/suspicious/noExplicitAny: test data of any shape, checked by the code under test
export function mergePatch(target: any, patch: unknown): any {
  if (typeof patch !== 'object' || patch === null || Array.isArray(patch)) return patch;
  const result =
    typeof target === 'object' && target !== null && !Array.isArray(target) ? { ...target } : {};
  for (const [name, value] of Object.entries(patch)) {
    if (value === null) delete result[name];
    else result[name] = mergePatch(result[name], value);
  }
  return result;
}
