/** What a sheet is made of. */
import type { Assessment } from '../assessment.ts';
import type { NightCurve } from '../curves.ts';
import type { House } from '../house.ts';

/** A file as it was read, told from any other by its hash. */
export interface FileOnRecord {
  readonly name: string;
  readonly bytes: number;
  /** Hexadecimal. */
  readonly sha256: string;
}

export interface Photo {
  readonly name: string;
  /** With the picture in it: a sheet asks for nothing. */
  readonly dataUri: string;
}

export interface SheetInput {
  readonly house: House;
  readonly assessment: Assessment;
  /** Of all nights, in their order. */
  readonly curves: readonly NightCurve[];
  /** `house.json`, then the files that it names. */
  readonly files: readonly FileOnRecord[];
  /** Of the software that made the assessment. */
  readonly version: string;
  /** The day on the sheet, "2027-02-14": the one thing in which two sheets of the same data differ. */
  readonly date: string;
  readonly photos: readonly Photo[];
}
