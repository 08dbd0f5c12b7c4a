/** No browser was found to print with. The message is one sentence that says what to do. */
export class NoBrowserError extends Error {
  override readonly name = 'NoBrowserError';
}

/** A document could not be printed. The message is one sentence that names the document. */
export class PrintError extends Error {
  override readonly name = 'PrintError';
  /** The name of the document that failed, where one did. */
  readonly document: string | undefined;

  constructor(message: string, document?: string, options?: ErrorOptions) {
    super(message, options);
    this.document = document;
  }
}
