import { hl7Concepts } from '../tables/hl7.ts';

const displays: ReadonlyMap<string, ReadonlyMap<string, string>> = /*@__PURE__*/ bySystem();

/** Display of a code of an HL7 code system, exactly as published. TypeError for one that our tables lack. */
export function hl7Display(system: string, code: string): string {
  const display = displays.get(system)?.get(code);
  if (display === undefined) throw new TypeError(`the table hl7 lacks ${system}|${code}`);
  return display;
}

function bySystem(): Map<string, Map<string, string>> {
  const systems = new Map<string, Map<string, string>>();
  for (const { system, code, display } of hl7Concepts) {
    const codes = systems.get(system) ?? new Map<string, string>();
    systems.set(system, codes.set(code, display));
  }
  return systems;
}
