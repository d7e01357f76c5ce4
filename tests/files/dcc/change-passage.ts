import { demonstration } from "./read-fixture";

export const good = new TextDecoder().decode(demonstration());

/** Replaces one passage, which must be there, and tells the line it stands on. */
export const changed = (
  from: string,
  to: string,
  base = good,
): { readonly bytes: Uint8Array; readonly line: number } => {
  const at = base.indexOf(from);
  if (at < 0) throw new Error(`The certificate has no ${from}`);
  return {
    bytes: new TextEncoder().encode(base.slice(0, at) + to + base.slice(at + from.length)),
    line: base.slice(0, at).split("\n").length,
  };
};

export const between = (start: string, end: string): string =>
  good.slice(good.indexOf(start), good.indexOf(end) + end.length);
