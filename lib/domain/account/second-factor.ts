/** How long a secret that was begun waits for its first code, and is shown to its owner. */
export const factorSetUpMilliseconds = 20 * 60_000;
