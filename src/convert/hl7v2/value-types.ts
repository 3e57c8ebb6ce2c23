/**
 * How OBX-5 is written for each value type of OBX-2 (table 0125, code system v2-0440 of HL7
 * terminology 7.0.1). `text` is one string in which `^` and `&` are characters; the repetitions of
 * `lines` are lines of one text; `number` is the SN type; `parts` has components.
 * `file` is a document or picture, which no text can hold.
 */
export type ValueForm = 'text' | 'lines' | 'number' | 'parts' | 'file';

const forms: readonly (readonly [ValueForm, string])[] = [
  ['text', 'ST'],
  ['lines', 'TX FT'],
  ['number', 'SN'],
  ['parts', 'NM ID IS SI DT TM DTM TS CE CWE CNE CF NR DR VR NA MA CX EI HD XCN XPN XON XAD XTN'],
  ['parts', 'CP CQ MO PN TN AD CK CN SNM FN'],
  ['file', 'ED RP'],
];

export const formOfType: ReadonlyMap<string, ValueForm> = new Map(
  forms.flatMap(([form, types]) => types.split(' ').map((type) => [type, form] as const)),
);

/** Form of OBX-5, or undefined when the type is none that an observation can have. */
export function valueForm(type: string): ValueForm | undefined {
  return formOfType.get(type);
}
