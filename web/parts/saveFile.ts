/** Puts a file that was made on this page with the person's downloads, as a link would. */
export function saveFile(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), LATER);
}

/** The browser has begun to save it by then [ms]. */
const LATER = 60_000;
