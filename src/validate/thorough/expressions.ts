/** A published invariant, as FHIRPath on the element that it stands at. */
export interface Expression {
  readonly key: string;
  readonly severity: 'error' | 'warning';
  readonly expression: string;
}

/** By path of the element in HL7's definitions, or by data type. */
export type ExpressionTable = Readonly<Record<string, readonly Expression[]>>;
