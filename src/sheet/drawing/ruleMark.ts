/** What stands on a ruler. */
export interface RuleMark {
  readonly label: string;
  readonly value: number;
  /** The 95 % interval; a drawn value has one where it is told how sure the drawing itself is. */
  readonly low?: number;
  readonly high?: number;
  /** Measured is a pencil mark, drawn a notch in the ruler's edge, any other a hollow mark. */
  readonly kind: 'measured' | 'drawn' | 'other';
}
