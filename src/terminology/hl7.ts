import { hl7Concepts } from './tables/hl7.ts';

const displays: ReadonlyMap<string, string> = /*@__PURE__*/ new Map(
  hl7Concepts.map(({ system, code, display }) => [`${system}|${code}`, display]),
);

/** Display of a code of an HL7 code system, exactly as published. TypeError for one that our tables lack. */
export function hl7Display(system: string, code: string): string {
  const display = displays.get(`${system}|${code}`);
  if (display === undefined) throw new TypeError(`the table hl7 lacks ${system}|${code}`);
  return display;
}
