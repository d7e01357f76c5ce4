/** Larger readings files are refused before they are read. */
export const readingsLimitBytes = 64 * 1024 * 1024;
