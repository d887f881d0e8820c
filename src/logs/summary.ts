/** Lines at the end of a file that sum the record up: averages, extremes, counts. */

/** Whether a row without a time says such a thing. */
export const isSummary = (row: readonly string[]): boolean =>
  SUMMARY.test(row.find((cell) => cell !== '') ?? '');

/** No summary is longer [rows]. */
export const LONGEST_SUMMARY = 30;

const SUMMARY =
  /^\W*(min|max|mean|avg|average|median|total|sum|count|std|statistic|summary|range|mittel|durchschnitt|summe|anzahl|zusammenfassung|media|medio|moyenne|promedio|mínim|máxim|minim|maxim|suma|totale|gemiddeld|aantal|som\b|resum|résum|somme|samples|readings|records|rows)/i;
