export type { FileOnRecord, Photo, SheetInput } from './input.ts';
export { firstPageHtml, sheetHtml } from './sheet.ts';
