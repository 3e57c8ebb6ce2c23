import type { Code, DateTime, Side, Text, UnitCode } from '../../model/primitive.ts';

/** One line of an older export: a named item and its value, with what else is said about it. */
export interface Item {
  readonly code: string;
  readonly value: ItemValue;
  readonly region?: Code | undefined;
  readonly side?: Side | undefined;
  readonly methods?: readonly Code[] | undefined;
  readonly conditions?: readonly Code[] | undefined;
  readonly at?: DateTime | undefined;
  /** Tells the finding that attributes and measurements belong to. */
  readonly group?: string | undefined;
  readonly note?: Text | undefined;
}

export type ItemValue =
  | { readonly word: string }
  | { readonly text: Text }
  | { readonly count: number }
  | { readonly number: string; readonly comparator?: string | undefined; readonly unit: UnitCode };

/** Names of items: what is stated, and of which concept. */
export const itemCodes = {
  finding: (finding: Code): string => `finding:${finding}`,
  attribute: (finding: Code, attribute: Code): string => `attribute:${finding}:${attribute}`,
  state: 'region-state',
  sensation: (point: Code, modality: Code): string => `sensation:${point}:${modality}`,
  comparison: (point: Code, modality: Code): string => `comparison:${point}:${modality}`,
  movement: (test: Code): string => `movement:${test}`,
  functionTest: (test: Code): string => `function:${test}`,
  measurement: (measure: Code): string => `measure:${measure}`,
  scale: (scale: Code, version: Text): string => `scale:${scale}:${version}`,
  symptom: (symptom: Code, toldBy?: string): string =>
    toldBy === undefined ? `symptom:${symptom}` : `symptom:${symptom}:${toldBy}`,
  condition: (condition: Code): string => `condition:${condition}`,
  note: 'note',
} as const;

/** The word for a state and its reason. */
export function stateWord(state: string, reason: Code): string {
  return `${state}:${reason}`;
}
