/** What the primitive types of the exam accept, in words. */
export const examWords: ReadonlyMap<string, string> = new Map([
  ['Decimal', 'a decimal as text, such as 4.0'],
  [
    'DateTime',
    'a date such as 2024, 2024-03 or 2024-03-01, or a time with zone such as 2024-03-01T09:30:00+01:00',
  ],
  ['Instant', 'a time with zone such as 2024-03-01T09:30:00+01:00'],
  ['PartialDate', 'a date such as 1962, 1962-03 or 1962-03-20'],
  ['Key', 'a key of letters, digits and . _ ~ : / - that begins with a letter or digit'],
  ['Code', 'a code of small letters, digits, dots and hyphens'],
  ['Text', 'text that is not blank'],
  ['UnitCode', 'a UCUM unit code such as mm'],
  ['Uri', 'an absolute URI such as https://clinic.example/numbers'],
  ['ExistingReference', 'a reference such as Patient/123'],
  ['Count', 'a whole number from 0 to 100000'],
  ['ThresholdSetting', 'a decimal as text, such as 4.0, or off'],
  ['Coding.code', 'a code without spaces at its ends'],
  ['Image.contentType', 'a media type such as image/jpeg'],
]);
