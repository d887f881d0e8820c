/** The language, or one that Intl takes where it refuses it ("en-US@posix", where the system's language is C). */
export function languageForIntl(tag: string): string {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? 'en-GB';
  } catch {
    return 'en-GB';
  }
}
