/** Multiplication in the group of the ten symmetries of a pentagon. */
const product = [
  '0123456789',
  '1234067895',
  '2340178956',
  '3401289567',
  '4012395678',
  '5987604321',
  '6598710432',
  '7659821043',
  '8765932104',
  '9876543210',
].map((row) => [...row].map(Number));

/** What becomes of a digit at each place from the right; the pattern repeats after eight. */
const permutation = [
  '0123456789',
  '1576283094',
  '5803796142',
  '8916043527',
  '9453126870',
  '4286573901',
  '2793806415',
  '7046913258',
].map((row) => [...row].map(Number));

/** What a SNOMED CT id looks like, its check digit aside. */
const SCTID = /^[1-9]\d{5,17}$/;

/** What a LOINC code looks like; parts (LP), answers (LA) and the like are not codes for observations. */
const LOINC_CODE = /^\d{1,7}-\d$/;

/**
 * True for 6 to 18 digits with a right check digit: a wrong or swapped digit is found.
 * @see J. Verhoeff, Error Detecting Decimal Codes, 1969; SNOMED CT Release File Specification, SCTID
 */
export function isSnomedId(text: string): boolean {
  if (!SCTID.test(text)) return false;
  let sum = 0;
  for (let place = 0; place < text.length; place++) {
    const digit = Number(text[text.length - 1 - place]);
    const turned = permutation[place % 8]?.[digit] ?? Number.NaN;
    sum = product[sum]?.[turned] ?? Number.NaN;
  }
  return sum === 0;
}

/**
 * True for a code such as 10199-8 whose last digit is the mod 10 check digit of the others.
 * @see LOINC Users' Guide, appendix on the mod 10 check digit
 */
export function isLoincCode(text: string): boolean {
  if (!LOINC_CODE.test(text)) return false;
  const digits = text.replace('-', '');
  let sum = 0;
  for (let place = 0; place < digits.length; place++) {
    const digit = Number(digits[digits.length - 1 - place]);
    const counted = place % 2 === 1 ? digit * 2 : digit;
    sum += counted > 9 ? counted - 9 : counted;
  }
  return sum % 10 === 0;
}

/** A code with the form of a SNOMED CT id, whether its check digit is right or not. */
export function looksLikeSnomedId(text: string): boolean {
  return SCTID.test(text);
}

/** A code with the form of a LOINC code, whether its check digit is right or not. */
export function looksLikeLoincCode(text: string): boolean {
  return LOINC_CODE.test(text);
}
