import { createHash, createSign, generateKeyPairSync, randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/*
 * A small OpenID provider for tests: discovery, authorization code with PKCE (RFC 7636), ID tokens signed by RS256. Who is
 * signed in there, and which fault the next ID token has, is told by POST /next.
 */

export type OidcFault = "none" | "nonce" | "issuer" | "audience" | "expired" | "signature";
type Asked = { readonly nonce: string; readonly challenge: string; readonly clientId: string };

const bodyOf = async (request: IncomingMessage): Promise<string> => {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString();
};

const base64url = (value: unknown): string => Buffer.from(JSON.stringify(value)).toString("base64url");

export const startOidcServer = async () => {
  const keys = generateKeyPairSync("rsa", { modulusLength: 2048 });
  const stranger = generateKeyPairSync("rsa", { modulusLength: 2048 });
  const asked = new Map<string, Asked>();
  let [subject, fault] = ["nobody", "none" as OidcFault];
  let issuer = "";

  const idToken = ({ nonce, clientId }: Asked): string => {
    const now = Math.floor(Date.now() / 1000);
    const header = base64url({ alg: "RS256", kid: "one", typ: "JWT" });
    const claims = base64url({
      iss: fault === "issuer" ? "https://elsewhere.example" : issuer,
      aud: fault === "audience" ? "another-client" : clientId,
      nonce: fault === "nonce" ? "another" : nonce,
      iat: fault === "expired" ? now - 7200 : now,
      exp: fault === "expired" ? now - 3600 : now + 300,
      sub: subject,
    });
    const key = fault === "signature" ? stranger.privateKey : keys.privateKey;
    return `${header}.${claims}.${createSign("RSA-SHA256").update(`${header}.${claims}`).sign(key, "base64url")}`;
  };

  const json = (response: ServerResponse, value: unknown, status = 200) =>
    void response.writeHead(status, { "content-type": "application/json" }).end(JSON.stringify(value));

  const authorize = (query: URLSearchParams, response: ServerResponse) => {
    const code = randomBytes(16).toString("hex");
    asked.set(code, {
      nonce: query.get("nonce") ?? "",
      challenge: query.get("code_challenge") ?? "",
      clientId: query.get("client_id") ?? "",
    });
    const back = new URL(query.get("redirect_uri") ?? "");
    back.searchParams.set("code", code);
    back.searchParams.set("state", query.get("state") ?? "");
    response.writeHead(302, { location: back.href }).end();
  };

  const token = async (request: IncomingMessage, response: ServerResponse) => {
    const form = new URLSearchParams(await bodyOf(request));
    const code = asked.get(form.get("code") ?? "");
    asked.delete(form.get("code") ?? "");
    const proof = createHash("sha256")
      .update(form.get("code_verifier") ?? "")
      .digest("base64url");
    if (!code || proof !== code.challenge) return json(response, { error: "invalid_grant" }, 400);
    json(response, {
      access_token: "unused",
      token_type: "Bearer",
      expires_in: 300,
      id_token: idToken(code),
    });
  };

  const server = createServer(async (request, response) => {
    const { pathname, searchParams } = new URL(request.url ?? "/", issuer);
    if (pathname === "/.well-known/openid-configuration")
      json(response, {
        issuer,
        authorization_endpoint: `${issuer}/authorize`,
        token_endpoint: `${issuer}/token`,
        jwks_uri: `${issuer}/keys`,
        response_types_supported: ["code"],
        subject_types_supported: ["public"],
        id_token_signing_alg_values_supported: ["RS256"],
        token_endpoint_auth_methods_supported: ["client_secret_basic"],
      });
    else if (pathname === "/keys")
      json(response, {
        keys: [{ ...keys.publicKey.export({ format: "jwk" }), kid: "one", use: "sig", alg: "RS256" }],
      });
    else if (pathname === "/authorize") authorize(searchParams, response);
    else if (pathname === "/token") await token(request, response);
    else if (pathname === "/next") {
      ({ subject, fault } = JSON.parse(await bodyOf(request)) as { subject: string; fault: OidcFault });
      json(response, {});
    } else json(response, {}, 404);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const stop = () =>
    new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { issuer, stop };
};
