/** `globalThis`, because Next loads modules more than once. */
const store = globalThis as unknown as { emfolioPublicUrl?: string };

/** Where people reach the platform; told once at start by whoever runs the process. Links in letters begin with it. */
export const configurePublicUrl = (url: string): void => {
  store.emfolioPublicUrl = new URL(url).origin;
};

/** null in a process that people do not reach, such as the one that tells the demonstration: it writes no letters. */
export const publicUrl = (): string | null => store.emfolioPublicUrl ?? null;
