import { describe, expect, it } from "vitest";
import { ownAddress } from "@/lib/web/auth-options";
import { contentPolicy, freshNonce } from "@/lib/web/content-policy";
import { isOwnOrigin } from "@/lib/web/origin";
import { ownLoopback, pointingTo } from "@/lib/web/own-loopback";
import { cookieNames } from "@/lib/web/session-cookie";

const own = "https://calibration.example";

describe("after sign-in", () => {
  it.each([
    ["/orders?state=open", `${own}/orders?state=open`],
    [`${own}/portal`, `${own}/portal`],
    ["https://elsewhere.example/orders", own],
    ["//elsewhere.example", own],
    ["/\\elsewhere.example", own],
    ["javascript:alert(1)", own],
    ["http://calibration.example/", own],
    ["https://calibration.example@elsewhere.example/", own],
  ])("%j leads to %j", (asked, led) => {
    expect(ownAddress(asked, own)).toBe(led);
  });
});

describe("isOwnOrigin", () => {
  it("takes the configured address and nothing else", () => {
    expect(isOwnOrigin(own, own)).toBe(true);
    for (const origin of [null, "", "null", `${own}/`, own.toUpperCase()])
      expect(isOwnOrigin(origin, own)).toBe(false);
  });
});

describe("the content policy", () => {
  const policy = (isHttps: boolean, isDevelopment = false) =>
    contentPolicy({ nonce: "N", isHttps, isDevelopment });

  it("lets only scripts of this request run, nothing frame it, and no form leave", () => {
    for (const part of [
      "script-src 'self' 'nonce-N' 'strict-dynamic'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
      "form-action 'self'",
    ])
      expect(policy(true).split("; ")).toContain(part);
    expect(policy(true)).not.toContain("unsafe-eval");
    expect(policy(true)).toContain("upgrade-insecure-requests");
    expect(policy(false)).not.toContain("upgrade-insecure-requests");
  });

  it("has a new nonce each time, of 192 bits", () => {
    const made = new Set(Array.from({ length: 100 }, freshNonce));
    expect(made.size).toBe(100);
    for (const nonce of made) expect(atob(nonce)).toHaveLength(24);
  });
});

describe("cookies", () => {
  it("are bound to this host on https", () => {
    expect(Object.values(cookieNames(true)).every((name) => name.startsWith("__Host-"))).toBe(true);
    expect(Object.values(cookieNames(false)).some((name) => name.startsWith("__"))).toBe(false);
  });
});

describe("ownLoopback", () => {
  const asked = new URL("http://127.0.0.1:3000/orders?x=1");

  it("leads from one name of this machine to the configured one", () => {
    expect(ownLoopback("127.0.0.1:3000", new URL("http://localhost:3000"), asked)?.href).toBe(
      "http://localhost:3000/orders?x=1",
    );
  });

  it.each([
    ["localhost:3000", "http://localhost:3000"],
    ["127.0.0.1:3000", "https://calibration.example"],
    ["calibration.lan:3000", "http://localhost:3000"],
    ["127.0.0.1:4000", "http://localhost:3000"],
    [null, "http://localhost:3000"],
    ["]", "http://localhost:3000"],
  ])("leaves %j alone where the address is %j", (host, publicUrl) => {
    expect(ownLoopback(host, new URL(publicUrl), asked)).toBeNull();
  });

  it("points there in a page of its own, where an address cannot become markup", async () => {
    const page = await pointingTo(new URL('http://localhost:3000/x?y="><script>alert(1)</script>')).text();
    expect(page).toContain('content="0; url=http://localhost:3000/x?y=');
    expect(page).not.toContain("<script>");
  });
});
