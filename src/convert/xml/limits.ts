/** Bounds on one exam element, so that no input takes unbounded time or memory. */
export interface XmlLimits {
  /** UTF-16 units. */
  readonly units: number;
  /** Elements inside each other, from the root of the document. */
  readonly depth: number;
  /** Attributes of one element. */
  readonly attributes: number;
  /** Elements of one exam. */
  readonly elements: number;
}

/** Far above any exam: a C-CDA document of a whole hospital stay has some MB and 20 to 30 levels. */
export const xmlLimits: XmlLimits = {
  units: 16 * 1024 * 1024,
  depth: 200,
  attributes: 200,
  elements: 200_000,
};
