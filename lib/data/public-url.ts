/** `globalThis`, because Next loads modules more than once. */
const store = globalThis as unknown as { emfolioPublicUrl?: string; emfolioDocumentUrl?: string };

/** Where people reach the platform; told once at start by whoever runs the process. Links in letters begin with it. */
export const configurePublicUrl = (url: string): void => {
  store.emfolioPublicUrl = new URL(url).origin;
};

/** null in a process that people do not reach, such as the one that tells the demonstration: it writes no letters. */
export const publicUrl = (): string | null => store.emfolioPublicUrl ?? null;

/**
 * Told to a process that writes no letters and makes documents all the same: whoever tells the demonstration. Its
 * certificates are to be checked like any other.
 */
export const configureDocumentUrl = (url: string): void => {
  store.emfolioDocumentUrl = new URL(url).origin;
};

/** Where a document says that it can be checked; null where nobody could. */
export const documentUrl = (): string | null => publicUrl() ?? store.emfolioDocumentUrl ?? null;
