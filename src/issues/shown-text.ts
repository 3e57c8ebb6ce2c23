/**
 * What a terminal or log would act on, or show other than it is: controls (escape sequences begin
 * with one), line and paragraph separators, marks of direction, and characters without width or form.
 * @see https://www.unicode.org/reports/tr36/#Bidirectional_Text_Spoofing
 */
export const actingText =
  /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Noncharacter_Code_Point}\u061C\u115F\u1160\u180E\u200B-\u200F\u202A-\u202E\u2060-\u206F\u3164\uFEFF\uFFA0\u{E0000}-\u{E0FFF}]/gu;

/**
 * Text as it can be shown to a person at a terminal or in a log, on one line: every character that
 * would act there is written as `\u{1b}`. Backslashes stay, so that names of files read as they are.
 */
export function shownText(text: string): string {
  return text.replace(actingText, (found) => `\\u{${found.codePointAt(0)?.toString(16)}}`);
}
