import { createServer, request } from "node:http";
import type { AddressInfo } from "node:net";
import { describe, expect, it } from "vitest";
import { appendPeers } from "@/lib/web/append-peer";
import { clientBehind } from "@/lib/web/client-of";

describe("where a request came from", () => {
  it.each([
    ["the connection, whatever the asker wrote before it", "6.6.6.6, 10.0.0.9", 0, "10.0.0.9"],
    ["who the one proxy saw", "6.6.6.6, 192.0.2.7, 10.0.0.1", 1, "192.0.2.7"],
    ["who the outer of two proxies saw", "192.0.2.7, 10.0.0.2, 10.0.0.1", 2, "192.0.2.7"],
    ["the connection, where it did not pass the proxy", "10.0.0.9", 1, "10.0.0.9"],
    ["unknown without a word", null, 1, "unknown"],
    ["unknown with an empty one", "", 0, "unknown"],
  ])("%s", (_, told, trustedProxies, client) => {
    expect(clientBehind(told, trustedProxies)).toBe(client);
  });

  it("is written behind what the asker claims, by the server itself", async () => {
    appendPeers();
    const told: unknown[] = [];
    const server = createServer((asked, answer) => {
      told.push(asked.headers["x-forwarded-for"]);
      answer.end();
    }).listen(0, "127.0.0.1");
    await new Promise((resolve) => server.once("listening", resolve));
    const { port } = server.address() as AddressInfo;
    for (const headers of [{ "x-forwarded-for": "6.6.6.6" }, {}])
      await new Promise((resolve) =>
        request({ port, host: "127.0.0.1", headers }, (answer) => answer.resume().on("end", resolve)).end(),
      );
    await new Promise((resolve) => server.close(resolve));
    expect(told).toEqual(["6.6.6.6, 127.0.0.1", "127.0.0.1"]);
  });
});
