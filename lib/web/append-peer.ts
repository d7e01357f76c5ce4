import { subscribe } from "node:diagnostics_channel";
import type { IncomingMessage } from "node:http";

/**
 * Writes the address that each request's connection comes from at the end of its X-Forwarded-For, as a proxy would. Next
 * fills the header only where it is empty, so that whoever fills it would otherwise be whom they name.
 */
export function appendPeers(): void {
  subscribe("http.server.request.start", (message) => {
    appendPeer((message as { readonly request: IncomingMessage }).request);
  });
}

export function appendPeer({ headers, socket }: Pick<IncomingMessage, "headers" | "socket">): void {
  const told = headers["x-forwarded-for"];
  const before = Array.isArray(told) ? told.join(", ") : told;
  const peer = socket.remoteAddress ?? "unknown";
  headers["x-forwarded-for"] = before ? `${before}, ${peer}` : peer;
}
