/** The part of pdfkit that is used; the package carries no types. */
declare module "pdfkit" {
  export default class PDFDocument {
    constructor(options: Readonly<Record<string, unknown>>);
  }
}
