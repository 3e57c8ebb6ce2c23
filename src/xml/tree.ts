import type { RecordFacts } from '../issues/issue.ts';

export interface XmlElement {
  /** As written, with its prefix. */
  readonly written: string;
  /** Without its prefix. */
  readonly name: string;
  /** Empty where it has none, or where its prefix is not declared and `lenient` was asked for. */
  readonly namespace: string;
  /** By their names as written, those that declare namespaces included. */
  readonly attributes: ReadonlyMap<string, string>;
  /** Namespaces of the attributes that have a declared prefix, by the same names. */
  readonly attributeNamespaces: ReadonlyMap<string, string>;
  /** The elements directly inside it. */
  readonly children: readonly XmlElement[];
  /** All that stands directly inside it, in order; its elements alone unless `content` was asked for. */
  readonly content: readonly XmlNode[];
  /** Where text other than white space first stands in it; -1 where there is none. */
  readonly textAt: number;
  /** Place of its `<`, and the place after its end. */
  readonly start: number;
  readonly end: number;
}

export type XmlNode =
  | XmlElement
  | { readonly text: string }
  | { readonly comment: string }
  | { readonly instruction: string };

export interface XmlReadOptions {
  /** UTF-16 units of the text. Default 100 million. */
  readonly characters?: number;
  /** Levels of elements; the root is 1. Default 200. */
  readonly depth?: number;
  /** Elements in the whole text. Default 5 million. */
  readonly elements?: number;
  /** Keep text, comments and processing instructions. Default false. */
  readonly content?: boolean;
  /**
   * For text that was cut out of a document: ampersands that begin no reference of XML stay as they
   * stand and are counted, and a prefix may be declared outside. Default false: both are faults.
   */
  readonly lenient?: boolean;
  /** Namespace declarations around the text: `['xmlns:c', 'urn:x']`. */
  readonly around?: ReadonlyMap<string, string>;
}

/** Why a text is not XML, and where that was seen. */
export type XmlFault = {
  [Code in XmlFaultCode]: {
    readonly code: Code;
    readonly facts: RecordFacts<Code>;
    /** Offset into the text; -1 where it is about the text as a whole. */
    readonly at: number;
  };
}[XmlFaultCode];

type XmlFaultCode =
  | 'not-well-formed'
  | 'forbidden-doctype'
  | 'invalid-unicode'
  | 'too-deep'
  | 'too-large';

export type XmlReading =
  | {
      readonly root: XmlElement;
      readonly unknownReferences: number;
      /** Where the processing instructions begin, in and around the root. */
      readonly instructions: readonly number[];
    }
  | { readonly fault: XmlFault };

export function isElement(node: XmlNode): node is XmlElement {
  return 'name' in node;
}
