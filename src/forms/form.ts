/**
 * The form of one protocol as plain data: what is asked, in which order, and what each answer says in
 * the exam. The Questionnaire is made of it, and answers are read by it. It holds no data of a person.
 */
export interface FormDescription {
  readonly format: 'face-neck-form/1';
  readonly protocol: { readonly id: string; readonly version: string };
  /** BCP 47 tag of the texts. */
  readonly language: FormLanguage;
  readonly title: string;
  readonly items: readonly FormItem[];
}

export type FormLanguage = 'en' | 'de';

/**
 * One question, or a group of them. The words of the types are those of Questionnaire in R4; see {@link
 * https://hl7.org/fhir/R4/valueset-item-type.html}.
 */
export interface FormItem {
  /** Key of the statement that the item is about, with what it asks of it behind a colon. */
  readonly linkId: string;
  readonly type: 'group' | 'choice' | 'decimal' | 'integer' | 'text' | 'string';
  /** What is asked, with the side where there is one. */
  readonly text: string;
  /** An answer is needed wherever the item is asked. */
  readonly required?: true;
  /** A question with several answers, or a group that can be filled in several times. */
  readonly repeats?: true;
  readonly readOnly?: true;
  readonly hidden?: true;
  /** Of a group: what is shown on one page. */
  readonly page?: true;
  /**
   * The item and what is below it is asked only where that question has one of these answers; where
   * none are named, any.
   */
  readonly enabledBy?: { readonly item: string; readonly codes?: readonly string[] };
  /** Of a choice. None is chosen beforehand. */
  readonly options?: readonly FormOption[];
  /** UCUM code of a figure. */
  readonly unit?: string;
  /** Least and greatest figure that a face or neck can give, in that unit. */
  readonly minimum?: number;
  readonly maximum?: number;
  /** Outside of these a figure is more often a slip, such as a lost decimal comma, than true. */
  readonly usual?: { readonly minimum: number; readonly maximum: number };
  /** Fixed: it tells which form was filled in. */
  readonly value?: string;
  /** What the answer says. Left out where it says nothing: of groups, and of what was said last time. */
  readonly says?: FormTarget;
  readonly items?: readonly FormItem[];
}

/** One answer of a choice. */
export interface FormOption {
  readonly system: string;
  readonly code: string;
  readonly display: string;
  /** What stands in the exam for it. */
  readonly value: string;
  /** What it says besides: a certainty, or the side of a place. */
  readonly also?: Readonly<Record<string, string>>;
}

/** Where an answer stands in the exam. */
export type FormTarget =
  | {
      readonly part: 'statement';
      /** Answers with the same key belong to one statement, within one filling in of a group. */
      readonly key: string;
      /** What is known of the statement before it is answered. */
      readonly statement: StatementBeginning;
      /** Member of the statement that the answer gives: `['reason', 'code']`. */
      readonly member: readonly string[];
      /** The answer stands there as a number, and not as text. */
      readonly as?: 'number';
    }
  | { readonly part: 'conclusion'; readonly member: readonly ['text'] | readonly ['concern'] }
  | { readonly part: 'protocol' };

export type StatementBeginning = { readonly kind: string } & Readonly<Record<string, string>>;
