/**
 * A time of the model in the form of HL7 v2 and CDA: no separators, and the zone always as an offset.
 * @see HL7 v2.8 chapter 2A, DTM
 */
export function compactTime(text: string): string {
  const [date = '', clock] = text.split('T');
  const day = date.replaceAll('-', '');
  return clock === undefined ? day : day + clock.replaceAll(':', '').replace('Z', '+0000');
}
