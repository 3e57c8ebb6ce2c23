import type { FormItem, FormTarget } from '../form.ts';
import type { FormWriter } from '../writer.ts';

type StatementTarget = Extract<FormTarget, { readonly part: 'statement' }>;

/** What is asked where there is no result, or none of the whole. */
export interface ReasonAsked {
  /** Begins the linkIds; `:reason` stands behind the item that it explains. */
  readonly linkId: string;
  readonly text: string;
  readonly enabledBy: NonNullable<FormItem['enabledBy']>;
  readonly target: Omit<StatementTarget, 'member'>;
  /** Where the reason stands in the statement. */
  readonly member: readonly string[];
}

/** A reason as a code, and in words where the list has none. */
export function reasonItems(
  writer: FormWriter,
  { linkId, text, enabledBy, target, member }: ReasonAsked,
): readonly FormItem[] {
  const other = writer.answers('reasons', ['other']);
  return [
    {
      linkId,
      type: 'choice',
      text,
      required: true,
      enabledBy,
      options: writer.reasons,
      says: { ...target, member: [...member, 'code'] },
    },
    ...(other.length === 0
      ? []
      : [
          {
            linkId: `${linkId}:words`,
            type: 'string' as const,
            text: writer.words.reasonWords,
            enabledBy: { item: linkId, codes: other.map(({ code }) => code) },
            says: { ...target, member: [...member, 'text'] },
          },
        ]),
  ];
}
