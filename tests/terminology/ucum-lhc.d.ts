/** What the tests use of @lhncbc/ucum-lhc, which ships no types. */
declare module '@lhncbc/ucum-lhc' {
  export class UcumLhcUtils {
    static getInstance(): UcumLhcUtils;
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
  }
}
