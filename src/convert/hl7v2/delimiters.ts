/**
 * Separators of one message, as its own MSH segment declares them.
 * HL7 v2 chapter 2, figure 2-1: MSH-2 holds component, repetition, escape and subcomponent separator
 * in this order; the last two may be left out where they are not used; a fifth character (v2.7 and
 * later) marks truncated values.
 */
export interface Delimiters {
  readonly field: string;
  readonly component: string;
  readonly repetition: string;
  readonly escape?: string;
  readonly subcomponent?: string;
  readonly truncation?: string;
}

/** Separators are displayable ASCII (v2.3 section 2.7); a letter or digit would cut words apart. */
const usable = /^[!-/:-@[-`{-~]{3,6}$/;

/**
 * Separators that an MSH, FHS or BHS line declares; undefined when they cannot be told: fewer than
 * two or more than five in MSH-2, a letter or digit among them, or the same one twice.
 */
export function delimitersOf(line: string): Delimiters | undefined {
  const field = line.charAt(3);
  if (field === '') return undefined;
  const end = line.indexOf(field, 4);
  const declared = line.slice(4, end === -1 ? undefined : end);
  const all = field + declared;
  if (!usable.test(all) || new Set(all).size !== all.length) return undefined;
  const [component = '', repetition = '', release, subcomponent, truncation] = declared;
  return {
    field,
    component,
    repetition,
    ...(release !== undefined && { escape: release }),
    ...(subcomponent !== undefined && { subcomponent }),
    ...(truncation !== undefined && { truncation }),
  };
}
