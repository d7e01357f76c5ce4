import { type NextRequest, NextResponse } from "next/server";
import { contentPolicy, freshNonce } from "@/lib/web/content-policy";
import { env } from "@/lib/web/env";
import { ownLoopback, pointingTo } from "@/lib/web/own-loopback";
import { requestPathHeader } from "@/lib/web/request-path";

/**
 * Routing and headers only; nothing is authorised here. `api/` stays out: bodies through a proxy are cut at 10 MB and
 * end as if they were whole. So does what is published at well-known addresses: it is the same for everybody, and kept.
 */
export const config = { matcher: ["/((?!api/|\\.well-known/|_next/static|_next/image|favicon|icon).*)"] };

export default function proxy(request: NextRequest): Response {
  const { publicOrigin, isHttps, isDevelopment, outside } = env();
  const elsewhere = ownLoopback(request.headers.get("host"), new URL(publicOrigin), request.nextUrl);
  if (elsewhere && request.method === "GET") return pointingTo(elsewhere);

  const nonce = freshNonce();
  const policy = contentPolicy({ nonce, isHttps, isDevelopment, outsideOrigin: outside?.origin });
  const headers = new Headers(request.headers);
  // The framework takes the nonce for its own scripts from this header of the request.
  headers.set("content-security-policy", policy);
  headers.set("x-nonce", nonce);
  headers.set(requestPathHeader, request.nextUrl.pathname + request.nextUrl.search);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("content-security-policy", policy);
  // Compressed, the one length of every answer about a certificate's standing would differ again.
  const asIs = request.nextUrl.pathname.startsWith("/authenticity/") ? ", no-transform" : "";
  response.headers.set("cache-control", `private, no-store${asIs}`);
  if (isHttps) response.headers.set("strict-transport-security", "max-age=31536000; includeSubDomains");
  return response;
}
