/** Where to go after signing in: a page of ours, whatever the address says. */
export function placeAfter(then: string | undefined): string {
  if (then === undefined || !/^\/(?![/\\])/.test(then)) return '/';
  // Line ends and tabs in front would be taken out by the browser, and something else be left.
  return /[\p{Cc}\\]/u.test(then) || then.startsWith('/sign-in') ? '/' : then;
}
