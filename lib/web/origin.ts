/**
 * The framework lets a server action through when the Origin header is missing, and believes a forwarded host.
 * Ours compares with the configured address only; missing or "null" is foreign.
 */
export const isOwnOrigin = (origin: string | null, publicOrigin: string): boolean => origin === publicOrigin;
