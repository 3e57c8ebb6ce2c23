import type { Reason, Statement } from '../statement.ts';

/** Every code, side and number as text is a string here; yes, no and counts stay what they are. */
type AsEntered<T> = T extends string
  ? string
  : T extends readonly (infer Item)[]
    ? readonly AsEntered<Item>[]
    : T extends object
      ? { readonly [Name in keyof T]: AsEntered<T[Name]> }
      : T;

type MembersOf<S> = S extends Statement ? keyof S : never;

type ValueOf<Name extends PropertyKey, S = Statement> = S extends Statement
  ? Name extends keyof S
    ? S[Name]
    : never
  : never;

/** What an empty field of a form gives. It counts as not given, and never as normal or absent. */
type Empty = '' | null | undefined;

type ReasonEntered = string | AsEntered<Reason>;

type ByCode<Value> = Readonly<Record<string, Value | Empty>>;

/** Members that can also be given in a shorter form, as the functions of the builder take them. */
interface Shorthands {
  /** By attribute: a value, or several in a list. */
  readonly attributes: ByCode<unknown>;
  /** By modality: a result, or a result with its reason. */
  readonly results: ByCode<string | { readonly result: string; readonly reason?: ReasonEntered }>;
  readonly reason: ReasonEntered;
  readonly limit: ReasonEntered;
  readonly unusable: ReasonEntered;
}

/**
 * A statement as a form gives it, its codes and sides known only at run time. The members are those
 * of {@link Statement}; reasons can be given by their code alone, attributes and results of sensation
 * by code.
 */
export type EnteredStatement = { readonly kind: string } & {
  readonly [Name in Exclude<MembersOf<Statement>, 'kind'>]?:
    | AsEntered<ValueOf<Name>>
    | (Name extends keyof Shorthands ? Shorthands[Name] : never)
    | Empty;
};
