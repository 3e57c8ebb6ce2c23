/**
 * Verhoeff check of a SNOMED CT id: 0 at the end of the sum means a valid id.
 * Built from the group itself: the symmetries of a pentagon, 0-4 turns and 5-9 flips, and
 * Verhoeff's permutation, applied once more for each place from the right.
 * @see J. Verhoeff, Error Detecting Decimal Codes, Mathematical Centre Tract 29, 1969; named as the
 * check digit of SCTIDs in the SNOMED CT Release File Specification
 */
export function passesVerhoeff(id: string): boolean {
  const digits = [...id].reverse().map(Number);
  return digits.reduce((sum, digit, place) => combine(sum, permute(digit, place)), 0) === 0;
}

function combine(left: number, right: number): number {
  const turn = (angle: number): number => ((angle % 5) + 5) % 5;
  if (left < 5) return right < 5 ? turn(left + right) : 5 + turn(left + right - 5);
  return right < 5 ? 5 + turn(left - 5 - right) : turn(left - right);
}

const permutation = [1, 5, 7, 6, 2, 8, 3, 0, 9, 4];

function permute(digit: number, times: number): number {
  let at = digit;
  for (let time = 0; time < times; time++) at = permutation[at] ?? Number.NaN;
  return at;
}

/**
 * Mod 10 check of a LOINC code: digits in odd places from the right are read as one number and
 * doubled, the digits of that and of the even places are added up to the next multiple of ten.
 * @see LOINC Users' Guide, appendix on the mod 10 check digit
 */
export function passesMod10(code: string): boolean {
  const [body = '', check = ''] = code.split('-');
  const fromRight = [...body].reverse();
  const odd = fromRight.filter((_, place) => place % 2 === 0).reverse();
  const even = fromRight.filter((_, place) => place % 2 === 1).reverse();
  const digits = `${even.join('')}${BigInt(odd.join('')) * 2n}`;
  const sum = [...digits].reduce((total, digit) => total + Number(digit), 0);
  return check === String((10 - (sum % 10)) % 10);
}
