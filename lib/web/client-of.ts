import "server-only";
import { env } from "./env";

/**
 * Where a request came from, by its X-Forwarded-For, whose last entry is our own (`append-peer.ts`). So many proxies of the
 * site's own stand before us; what stands before their entries was written by whoever asked.
 */
export const clientOf = (forwardedFor: string | null): string =>
  clientBehind(forwardedFor, env().trustedProxies);

export const clientBehind = (forwardedFor: string | null, trustedProxies: number): string => {
  const passed = forwardedFor?.split(",").map((entry) => entry.trim()) ?? [];
  return passed[Math.max(0, passed.length - 1 - trustedProxies)] || "unknown";
};
